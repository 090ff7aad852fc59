import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { TripFile } from '../../../../server/contract/trip.ts';
import { type Reckoned, reckonTrip } from '../../../../server/core/analyse/analyse.ts';
import type { Course } from '../../../../server/core/gaps/course/course.ts';
import { amountBetween } from '../../../../server/core/gaps/course/profile.ts';
import type { LoadSpan } from '../../../../server/core/mass/load.ts';
import { massWithFullTanks } from '../../../../server/core/mass/mass-at.ts';
import { equatorDocument, inputOf } from '../../../helpers/analyse-input.ts';
import { rigOf } from '../../mass/rigs.ts';

const LENGTH_KM = 600;
const LENGTH_M = LENGTH_KM * 1000;

/** A rig whose rate of 17 l/100 km was seen with full tanks, 2 % more for each 100 kg above that. */
const rig: RigFile = (() => {
  const file = rigOf();
  const massKg = massWithFullTanks(file)!;
  return {
    ...file,
    fuel: { ...file.fuel, observed: { surface: 'sealed', massKg }, loadPercentPer100Kg: 2 },
  };
})();

const TRIP: TripFile = {
  ...inputOf().trip,
  surfaces: [
    { fromKm: 0, toKm: 200, surface: 'sealed', allowancePercent: 0 },
    { fromKm: 200, toKm: 350, surface: 'sand', allowancePercent: 10 },
    { fromKm: 350, toKm: LENGTH_KM, surface: 'sealed', allowancePercent: 0 },
  ],
};

function tripOver(heights: readonly number[] | null): Reckoned {
  const document = equatorDocument(LENGTH_KM);
  const [segment] = document.parts[0]!.segments;
  if (heights !== null)
    segment!.ele.forEach((_, index, ele) => {
      ele[index] = heights[Math.floor((index / ele.length) * heights.length)]!;
    });
  const outcome = reckonTrip(inputOf({ document, rig, trip: TRIP }));
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}

const outL = ({ litres }: Course, fromKm: number, toKm: number) =>
  amountBetween(litres.out, fromKm * 1000, toKm * 1000);
const whole = (moreKg: number): LoadSpan[] => [{ fromM: 0, toM: LENGTH_M, moreKg }];

describe('a course with a load along the way', () => {
  it('goes by what is aboard at each place, 17 l/100 km with full tanks', () => {
    const course = tripOver(null).fuelWithLoads({
      mostKg: 100,
      along: [
        { fromM: 0, toM: 100_000, moreKg: 100 },
        { fromM: 100_000, toM: 400_000, moreKg: 50 },
        { fromM: 400_000, toM: LENGTH_M, moreKg: -80 },
      ],
    });
    expect(outL(course, 0, 100)).toBeCloseTo(17 * 1.02, 6);
    expect(outL(course, 100, 200)).toBeCloseTo(17 * 1.01, 6);
    expect(outL(course, 350, 400)).toBeCloseTo(8.5 * 1.01, 6);
    // No lighter than it was when the rate was seen.
    expect(outL(course, 400, 600)).toBeCloseTo(34, 6);
    // Home and off the route by the heaviest.
    expect(amountBetween(course.litres.home, 500_000, LENGTH_M)).toBeCloseTo(17 * 1.02, 6);
    // On unknown ground 100 kg roll like on gravel as well, 0.007 above sealed road (an engine of 35 %, 36 MJ/l).
    const rollingLPerM = (0.007 * 100 * 9.80665) / (0.35 * 36e6);
    const surfaceFactor = (course.off.litres / course.off.wayM - rollingLPerM) / (0.00017 * 1.02);
    const light = tripOver(null).fuelWithLoads({ mostKg: 100, along: whole(0) });
    expect(light.off.litres).toBeCloseTo(light.off.wayM * 0.00017 * surfaceFactor, 12);
    const terms = course.explain(0, LENGTH_M);
    expect(terms.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(outL(course, 0, LENGTH_KM), 6);
  });

  it('is that of the same load all the way where it is the same all the way', () => {
    const heights = [200, 900, 400, 1800, 1200, 300, 1000];
    for (const trip of [tripOver(null), tripOver(heights)]) {
      for (const moreKg of [-300, 0, 60]) {
        const lightened = trip.fuelWithLoads({ mostKg: 150, along: whole(moreKg) });
        const plain = trip.fuelWithLoad(moreKg);
        for (let km = 0; km < LENGTH_KM; km += 37) {
          // Climbs are kept within a hundredth of a litre at either end.
          expect(Math.abs(outL(lightened, km, km + 37) - outL(plain, km, km + 37))).toBeLessThan(0.03);
          const homeL = ({ litres }: Course) => amountBetween(litres.home, km * 1000, (km + 37) * 1000);
          expect(Math.abs(homeL(lightened) - homeL(plain))).toBeLessThan(0.03);
        }
        expect(lightened.off.litres).toBeCloseTo(plain.off.litres, 12);
      }
    }
  });

  it('never takes more than with the heaviest load all the way, on any stretch', { tags: 'slow' }, () => {
    const pieces = fc.array(
      fc.record({ km: fc.integer({ min: 1, max: 599 }), moreKg: fc.integer({ min: -400, max: 200 }) }),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 2500 }), { minLength: 2, maxLength: 30 }),
        pieces,
        (heights, drawn) => {
          const cuts = [...new Set([0, ...drawn.map(({ km }) => km * 1000), LENGTH_M])].sort((a, b) => a - b);
          const along = cuts.slice(1).map((toM, index) => ({
            fromM: cuts[index]!,
            toM,
            moreKg: drawn[index % drawn.length]!.moreKg,
          }));
          const trip = tripOver(heights);
          const heaviest = trip.fuelWithLoad(200);
          const course = trip.fuelWithLoads({ mostKg: 200, along });
          for (let km = 0; km < LENGTH_KM; km += 7) {
            for (const way of ['out', 'home'] as const) {
              const of = ({ litres }: Course) =>
                amountBetween(litres[way], km * 1000, Math.min(LENGTH_M, (km + 7) * 1000));
              expect(of(course)).toBeLessThanOrEqual(of(heaviest) + 1e-9);
              expect(of(course)).toBeGreaterThanOrEqual(-1e-9);
            }
          }
          expect(course.off.litres).toBeLessThanOrEqual(heaviest.off.litres);
        },
      ),
      { numRuns: 60, seed: 20_270_101 },
    );
  });
});
