import fc from 'fast-check';
import { expect, it } from 'vitest';
import { markText } from '../../../server/app/sheet/parts/gauge-marks.ts';
import { atLeast, kmBefore, needed } from '../../../server/app/text/lines/rounding.ts';
import { aboardBeside, wholeAbove, wholeBelow } from '../../../server/core/quantity/rounding.ts';

const litres = fc.double({ min: 0, max: 5000, noNaN: true });

it('what is read on the way never tells of more aboard, of less needed, or of a later place to turn back', () => {
  fc.assert(
    fc.property(litres, litres, (a, b) => {
      expect(Number(atLeast(a))).toBeLessThanOrEqual(a + 1e-6);
      expect(Number(needed(a))).toBeGreaterThanOrEqual(a - 1e-6);
      expect(Number(kmBefore(a))).toBeLessThanOrEqual(a);
      expect(wholeAbove(a)).toBeGreaterThanOrEqual(a - 1e-6);
      expect(wholeBelow(a)).toBeLessThanOrEqual(a + 1e-6);
      // Beside a need that it covers it is not below that need, and otherwise not above what there is.
      if (a >= b) expect(aboardBeside(a, b)).toBeGreaterThanOrEqual(wholeAbove(b));
      else expect(aboardBeside(a, b)).toBeLessThanOrEqual(a + 1e-5);
    }),
  );
});

it('float noise is no reason for a litre more or less', () => {
  expect(needed(20 + 1e-9)).toBe('20');
  expect(atLeast(20 - 1e-9)).toBe('20');
  expect(needed(0.31)).toBe('0.4');
  expect(atLeast(0.39)).toBe('0.3');
});

const EIGHTHS: Record<string, number> = {
  empty: 0,
  '1/8': 1,
  '1/4': 2,
  '3/8': 3,
  '1/2': 4,
  '5/8': 5,
  '3/4': 6,
  '7/8': 7,
  full: 8,
};

it('a mark of the gauge beside its cans holds what is needed, and the mark below does not', () => {
  fc.assert(
    fc.property(
      fc.record({
        tank: fc.record({
          name: fc.constant('main'),
          filledL: fc.integer({ min: 20, max: 300 }),
          unusableL: fc.integer({ min: 0, max: 10 }),
        }),
        canL: fc.integer({ min: 5, max: 25 }),
      }),
      fc.integer({ min: 0, max: 8 }),
      fc.double({ min: 0, max: 400, noNaN: true }),
      (dial, cans, needL) => {
        const text = markText(needL, dial, cans);
        const { filledL, unusableL } = dial.tank;
        const inCans = cans * dial.canL;
        if (text === '> full') {
          expect(needL).toBeGreaterThan(filledL - unusableL + inCans);
          return;
        }
        const [mark = '', more = '0'] = text.split(' + ');
        expect(Number(more)).toBe(cans);
        const eighths = EIGHTHS[mark]!;
        const givesL = (at: number) => Math.max(0, (at / 8) * filledL - unusableL) + inCans;
        expect(givesL(eighths)).toBeGreaterThanOrEqual(needL - 1e-3);
        if (eighths > 0) expect(givesL(eighths - 1)).toBeLessThan(needL);
      },
    ),
  );
});
