import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { quantile } from '../../../server/core/log/percentile.ts';
import { csvOf, fuelLog, independentQuantile, refusal } from './learn-helpers.ts';

const HEADER = 'odometer_km,litres,full';

/** Fill-ups with whole km and tenths of a litre; every third one a part fill, six full ones at least. */
const fills = fc
  .array(fc.record({ km: fc.integer({ min: 100, max: 900 }), tenths: fc.integer({ min: 50, max: 1500 }) }), {
    minLength: 12,
    maxLength: 40,
  })
  .map((steps) => {
    let odometer = 1000;
    return steps.map(({ km, tenths }, index) => {
      odometer += km;
      return { odometer, tenths, full: index % 3 !== 2 };
    });
  });
type Fills = typeof fills extends fc.Arbitrary<infer T> ? T : never;
const lineOf = ({ odometer, tenths, full }: Fills[number]) =>
  `${odometer},${tenths / 10},${full ? 'full' : 'part'}`;
const text = (of: Fills) => csvOf(HEADER, ...of.map(lineOf));

describe('the quantile', () => {
  const values = fc.array(fc.double({ min: 0.1, max: 200, noNaN: true }), { minLength: 2, maxLength: 60 });

  it('agrees with another way of reckoning it', () => {
    fc.assert(
      fc.property(values, fc.double({ min: 0, max: 1, noNaN: true }), (of, p) => {
        expect(quantile(of, p)).toBeCloseTo(independentQuantile(of, p), 8);
      }),
    );
  });

  it('is one of the values where (n - 1) p is whole, and does not mind their order', () => {
    // Eleven values: the 10th, 50th and 90th percentile are the 2nd, 6th and 10th.
    const of = [31, 4, 15, 9, 26, 5, 35, 8, 97, 93, 23];
    expect([0.1, 0.5, 0.9].map((p) => quantile(of, p))).toEqual([5, 23, 93]);
    expect(of[0]).toBe(31);
  });
});

describe('what a log of fill-ups teaches', () => {
  it('rises with the litres in proportion', () => {
    fc.assert(
      fc.property(fills, fc.constantFrom(0.25, 0.5, 1.25), (of, times) => {
        const once = fuelLog(text(of)).litresPer100Km;
        const more = fuelLog(
          text(of.map((fill) => ({ ...fill, tenths: fill.tenths * times }))),
        ).litresPer100Km;
        for (const end of ['low', 'typical', 'high'] as const)
          expect(more[end]).toBeCloseTo(once[end] * times, 8);
      }),
    );
  });

  it('keeps low, typical and high in order, between the least and the greatest interval', () => {
    fc.assert(
      fc.property(fills, (of) => {
        const { intervals, litresPer100Km } = fuelLog(text(of));
        const rates = intervals.map((interval) => interval.litresPer100Km);
        const { low, typical, high } = litresPer100Km;
        const order = [Math.min(...rates), low, typical, high, Math.max(...rates)];
        for (const [index, rate] of order.slice(1).entries())
          expect(rate).toBeGreaterThanOrEqual(order[index]! - 1e-9);
      }),
    );
  });

  it('gives the rig no narrower range than it found', () => {
    fc.assert(
      fc.property(fills, (of) => {
        const { litresPer100Km, yaml } = fuelLog(text(of));
        const told = (parse(yaml) as { fuel: { litresPer100Km: typeof litresPer100Km } }).fuel.litresPer100Km;
        expect(told.low).toBeLessThanOrEqual(litresPer100Km.low + 1e-5);
        expect(told.high).toBeGreaterThanOrEqual(litresPer100Km.high - 1e-5);
        expect(Math.abs(told.low - litresPer100Km.low)).toBeLessThan(0.0101);
        expect(Math.abs(told.high - litresPer100Km.high)).toBeLessThan(0.0101);
        expect(Math.abs(told.typical - litresPer100Km.typical)).toBeLessThan(0.0051);
      }),
    );
  });

  it('loses no kilometre and no litre from the first full tank to the last', () => {
    fc.assert(
      fc.property(fills, (of) => {
        const first = of.findIndex((fill) => fill.full);
        const last = of.findLastIndex((fill) => fill.full);
        const { total } = fuelLog(text(of));
        expect(total.km).toBeCloseTo(of[last]!.odometer - of[first]!.odometer, 6);
        const tenths = of.slice(first + 1, last + 1).reduce((sum, fill) => sum + fill.tenths, 0);
        expect(total.litres).toBeCloseTo(tenths / 10, 6);
      }),
    );
  });

  it('does not change when a fill-up is split in two at one place', () => {
    fc.assert(
      fc.property(fills, fc.nat(), (of, pick) => {
        const at = pick % of.length;
        const { odometer, tenths, full } = of[at]!;
        const half = Math.floor(tenths / 2);
        fc.pre(half !== tenths - half);
        const parts = [
          { odometer, tenths: half, full: false },
          { odometer, tenths: tenths - half, full },
        ];
        const split = fuelLog(text([...of.slice(0, at), ...parts, ...of.slice(at + 1)])).litresPer100Km;
        const whole = fuelLog(text(of)).litresPer100Km;
        for (const end of ['low', 'typical', 'high'] as const) expect(split[end]).toBeCloseTo(whole[end], 8);
      }),
    );
  });

  it('minds the order of the lines: two that are exchanged are refused with their place', () => {
    fc.assert(
      fc.property(fills, fc.nat(), (of, pick) => {
        const at = 1 + (pick % (of.length - 1));
        const mixed = [...of.slice(0, at - 1), of[at]!, of[at - 1]!, ...of.slice(at + 1)];
        expect(refusal(text(mixed)).place).toBe(`line ${at + 2}, odometer_km`);
        // Put in order again it is the same log.
        const sorted = mixed.sort((a, b) => a.odometer - b.odometer);
        expect(fuelLog(text(sorted))).toEqual(fuelLog(text(of)));
      }),
    );
  });
});
