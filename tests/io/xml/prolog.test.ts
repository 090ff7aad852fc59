import fc from 'fast-check';
import { expect, it } from 'vitest';
import { InputProblem } from '../../../server/core/input/problem.ts';
import { refuseForeignText } from '../../../server/io/gpx/refuse-format.ts';
import { behindProlog } from '../../../server/io/xml/prolog.ts';

it.each([
  ['<gpx>', '<gpx>'],
  ['  \n<?xml version="1.0"?>\n<!-- a > b --><gpx>', '<gpx>'],
  ['<!----><gpx>', '<gpx>'],
  ['<!-->--><gpx>', '--><gpx>'],
  ['<!-- never ends <gpx>', null],
  ['<?xml', null],
  ['', ''],
])('behind the prolog of %j stands %j', (text, rest) => {
  expect(behindProlog(text)).toBe(rest);
});

it('whatever stands before it, an element is found behind', () => {
  const before = fc.array(
    fc.constantFrom(' ', '\n', '<!---->', '<!-- <html> -->', '<?xml version="1.0"?>', '<!-- - -- > -->'),
  );
  fc.assert(
    fc.property(before, (parts) => {
      expect(behindProlog(`${parts.join('')}<gpx/>`)).toBe('<gpx/>');
    }),
  );
});

it('a page is told behind any count of comments, and no count of them takes long', () => {
  const comments = '<!---->'.repeat(9_000);
  expect(() => refuseForeignText(`${comments}<gpx>`, 'x.gpx')).not.toThrow();
  expect(() => refuseForeignText(comments, 'x.gpx')).not.toThrow();
  expect(() => refuseForeignText(`${comments}<!DOCTYPE html><p>`, 'x.gpx')).toThrow(InputProblem);
});
