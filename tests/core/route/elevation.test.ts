import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sumsAt, thinned } from '../../../server/core/fuel/course/summed-profiles.ts';
import { profileOf } from '../../../server/core/gaps/course/profile.ts';
import { climbOf, heightsOf, smoothed, turningPoints } from '../../../server/core/route/elevation.ts';
import { readGpx } from '../../../server/io/gpx/read-gpx.ts';
import { equatorDocument } from '../../helpers/analyse-input.ts';
import { describeReal, realPath } from '../../helpers/real.ts';
import { heightsOver } from '../fuel/facts.ts';
import { routeOfDocument } from './lines.ts';

const up = (eles: readonly number[], thresholdM: number) =>
  climbOf(smoothed(heightsOver(100_000, eles), thresholdM).eleM).upM;

const anyEles = fc.array(fc.double({ min: -200, max: 3000, noNaN: true }), { minLength: 2, maxLength: 120 });
const anyThreshold = fc.double({ min: 0, max: 60, noNaN: true });

describe('smoothing', () => {
  test('noise up to the threshold adds no climb', () => {
    const flat = Array.from({ length: 50 }, (_, index) => 300 + (index % 2) * 8);
    expect(up(flat, 10)).toBe(8);
    expect(up([...flat, 300], 10)).toBe(0);
    expect(up(flat, 0)).toBe(25 * 8);
  });

  test('a climb with noise on it counts once, from hollow to summit', () => {
    const climb = [0, 30, 24, 60, 55, 100, 94, 130];
    expect(up(climb, 10)).toBe(130);
    expect(up([...climb, 60, 66, 0, 40], 10)).toBe(130 + 40);
  });

  test('of a fall lets the line stay level where it rose, never rise', () => {
    const heights = heightsOver(3, [100, 50, 60, 0]);
    expect([...smoothed(heights, 20).eleM]).toEqual([100, 50, 50, 0]);
    expect([...smoothed(heightsOver(3, [0, 60, 50, 100]), 20).eleM]).toEqual([0, 60, 60, 100]);
  });

  test('keeps the height of the first and the last place', () => {
    fc.assert(
      fc.property(anyEles, anyThreshold, (eles, thresholdM) => {
        const { eleM } = smoothed(heightsOver(100_000, eles), thresholdM);
        expect([eleM[0], eleM.at(-1)]).toEqual([eles[0], eles.at(-1)]);
        const { upM, downM } = climbOf(eleM);
        expect(upM - downM).toBeCloseTo(eles.at(-1)! - eles[0]!, 6);
      }),
    );
  });

  test('should never add climb or descent', () => {
    fc.assert(
      fc.property(anyEles, anyThreshold, (eles, thresholdM) => {
        const raw = climbOf(Float64Array.from(eles));
        const smooth = climbOf(smoothed(heightsOver(100_000, eles), thresholdM).eleM);
        expect(smooth.upM).toBeLessThanOrEqual(raw.upM + 1e-6);
        expect(smooth.downM).toBeLessThanOrEqual(raw.downM + 1e-6);
      }),
    );
  });

  test('should add no climb to what is smooth already, however high the threshold of before', () => {
    fc.assert(
      fc.property(anyEles, anyThreshold, (eles, thresholdM) => {
        const once = smoothed(heightsOver(100_000, eles), thresholdM);
        expect(climbOf(smoothed(once, thresholdM).eleM).upM).toBeLessThanOrEqual(
          climbOf(once.eleM).upM + 1e-6,
        );
      }),
    );
  });

  test('climbs should add over spans joined at turning points', () => {
    fc.assert(
      fc.property(anyEles, anyThreshold, fc.nat(), (eles, thresholdM, pick) => {
        const eleM = Float64Array.from(eles);
        const turns = turningPoints(eleM, thresholdM);
        const at = turns[pick % turns.length]!;
        const { upM, downM } = climbOf(smoothed(heightsOver(100_000, eles), thresholdM).eleM);
        const parts = [eles.slice(0, at + 1), eles.slice(at)]
          .filter((part) => part.length > 1)
          .map((part) => climbOf(smoothed(heightsOver(1, part), thresholdM).eleM));
        expect(parts.reduce((sum, part) => sum + part.upM, 0)).toBeCloseTo(upM, 6);
        expect(parts.reduce((sum, part) => sum + part.downM, 0)).toBeCloseTo(downM, 6);
      }),
    );
  });

  test('without a threshold nothing is smoothed away', () => {
    fc.assert(
      fc.property(anyEles, (eles) => {
        expect(up(eles, 0)).toBeCloseTo(climbOf(Float64Array.from(eles)).upM, 6);
      }),
    );
  });
});

describe('elevations of a route', () => {
  const at = (eles: number[]) =>
    heightsOf(
      Float64Array.from(eles, (_, index) => index * 1000),
      Float64Array.from(eles),
    );

  test('places without one are passed over, and their steps told', () => {
    const { heights, unknownM, absurd } = at([100, Number.NaN, 300, 310, Number.NaN]);
    expect([...heights!.atM]).toEqual([0, 2000, 3000]);
    expect([...heights!.eleM]).toEqual([100, 300, 310]);
    expect(unknownM).toBe(3000);
    expect(absurd).toBe(0);
  });

  test('heights that no road has stand for none', () => {
    const { heights, absurd } = at([100, -32_768, 200, 9999]);
    expect([...heights!.eleM]).toEqual([100, 200]);
    expect(absurd).toBe(2);
  });

  test('one known height makes no line', () => {
    expect(at([100, Number.NaN]).heights).toBeNull();
  });

  test('of points at one place the last holds', () => {
    const { heights } = heightsOf(Float64Array.of(0, 500, 500, 900), Float64Array.of(1, 2, 3, 4));
    expect([...heights!.atM]).toEqual([0, 500, 900]);
    expect([...heights!.eleM]).toEqual([1, 3, 4]);
  });

  test('rise evenly where long steps are cut, and are null where the file has none', () => {
    const document = equatorDocument(30, 10);
    expect(routeOfDocument(document).eleM).toBeNull();
    document.parts[0]!.segments[0]!.ele = Float64Array.of(0, 100, 100, 0);
    const { atM, eleM } = routeOfDocument(document);
    expect(eleM!.length).toBeGreaterThan(4);
    for (const [index, ele] of eleM!.entries()) {
      const km = atM[index]! / 1000;
      expect(ele).toBeCloseTo(km <= 10 ? km * 10 : km <= 20 ? 100 : 300 - km * 10, 2);
    }
  });
});

describe('a thinned profile', () => {
  test('should keep within the tolerance everywhere, and to the last bit where asked', () => {
    const anySteps = fc.array(
      fc.record({
        lengthM: fc.double({ min: 0.5, max: 5000, noNaN: true }),
        amount: fc.double({ min: -1, max: 1, noNaN: true }),
      }),
      { minLength: 1, maxLength: 80 },
    );
    fc.assert(
      fc.property(
        anySteps,
        fc.double({ min: 0.001, max: 2, noNaN: true }),
        fc.nat(),
        (steps, tolerance, pick) => {
          const profile = profileOf(steps);
          const keptM = profile.atM[pick % profile.atM.length]!;
          const thin = thinned(profile, new Set([keptM]), tolerance);
          const sums = sumsAt(thin, profile.atM);
          for (const [index, sum] of sums.entries()) {
            expect(Math.abs(sum - profile.sum[index]!)).toBeLessThanOrEqual(tolerance + 1e-9);
          }
          expect([...thin.atM]).toContain(keptM);
          expect(thin.sum.at(-1)).toBe(profile.sum.at(-1));
          expect(thin.atM.length).toBeLessThanOrEqual(profile.atM.length);
        },
      ),
    );
  });
});

describeReal('climbs of a real track', () => {
  test('shrink as the threshold grows, and keep the difference between its ends', async () => {
    const route = routeOfDocument(await readGpx(realPath('routes/grand-canyon.gpx'), 'grand-canyon.gpx'));
    const { heights, unknownM, absurd } = heightsOf(route.atM, route.eleM!);
    expect([unknownM, absurd]).toEqual([0, 0]);
    const raw = climbOf(heights!.eleM);
    let last = raw;
    for (const thresholdM of [0, 2, 5, 10, 20, 50]) {
      const climb = climbOf(smoothed(heights!, thresholdM).eleM);
      expect(climb.upM).toBeLessThanOrEqual(last.upM + 1e-6);
      expect(climb.upM - climb.downM).toBeCloseTo(raw.upM - raw.downM, 6);
      last = climb;
    }
    expect(climbOf(smoothed(heights!, 10).eleM).upM).toBeLessThan(raw.upM / 2);
  });
});

describe('the way on unknown elevations', () => {
  const unknownOf = (...eles: number[]) =>
    heightsOf(
      Float64Array.from(eles, (_, index) => index * 100),
      Float64Array.from(eles),
    ).unknownM;

  test('is every step with an unknown end, the first place among them', () => {
    expect(unknownOf(1, 2, 3)).toBe(0);
    expect(unknownOf(Number.NaN, 2, 3)).toBe(100);
    expect(unknownOf(1, Number.NaN, 3, 4)).toBe(200);
  });
});
