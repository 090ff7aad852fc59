import fc from 'fast-check';
import { expect, it } from 'vitest';
import { directionRuns } from '../../../../server/app/sheet/model/direction.ts';
import { lettersOf } from '../../../../server/app/sheet/pdf/letters.ts';

it.each([
  ['Ketta (km 12)', ['Ketta (km 12)']],
  ['بئر الماء', ['<بئر الماء']],
  ['fill at بئر الماء (km 12)', ['fill at ', '<بئر الماء', ' (km 12)']],
  ['12 בית 34', ['12 ', '<בית', ' 34']],
  [' ', [' ']],
  ['', []],
])('"%s" is set in runs of one direction', (text, runs) => {
  expect(directionRuns(text).map((run) => `${run.isRightToLeft ? '<' : ''}${run.text}`)).toEqual(runs);
});

const SIGNS = fc.constantFrom(...'ab 12,(بئר ת');

it('runs lose nothing and turn nothing round, and no number is in one that is turned round', () => {
  fc.assert(
    fc.property(fc.string({ unit: SIGNS }), (text) => {
      const runs = directionRuns(text);
      expect(runs.map((run) => run.text).join('')).toBe(text);
      for (const { text: run, isRightToLeft } of runs) if (isRightToLeft) expect(run).not.toMatch(/[0-9]/);
    }),
  );
});

it('every sign that there is no letter for is replaced, and nothing else', () => {
  const { printable, runs } = lettersOf((sign) => sign !== '水');
  expect(printable('a水b𝒳')).toBe('a▯b𝒳');
  expect(JSON.stringify(runs('水 بئر قديم'))).toBe(
    JSON.stringify({ text: [{ text: '▯ ' }, { text: 'بئر\u00a0قديم' }] }),
  );
});
