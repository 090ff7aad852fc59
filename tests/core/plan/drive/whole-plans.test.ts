import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { TripFile } from '../../../../server/contract/trip.ts';
import { reckonTrip } from '../../../../server/core/analyse/analyse.ts';
import { massWithFullTanks } from '../../../../server/core/mass/mass-at.ts';
import { basisOf } from '../../../../server/core/plan/drive/basis.ts';
import { massesAlong } from '../../../../server/core/plan/drive/masses.ts';
import { turnBacksOf } from '../../../../server/core/plan/drive/turn-back/turn-backs.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { COMMODITIES } from '../../../../server/core/quantity/commodities.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature, TAP } from '../../../helpers/analyse-input.ts';
import { gaugeOf, oneFailure, planCarry, whatIf } from '../by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const LENGTH_KM = 1500;
const whole = (min: number, max: number) => fc.integer({ min, max });

const stop = fc.record({
  km: whole(10, LENGTH_KM - 10),
  offKm: fc.constantFrom(0, 0, 1, 4),
  what: fc.constantFrom('fuel' as const, 'water' as const, 'both' as const),
  kindOnly: fc.boolean(),
  /** Litres to be had at the most; 0: as many as are wanted. */
  mostL: fc.constantFrom(0, 0, 0, 10, 25, 40),
  waitHours: fc.constantFrom(0, 0, 0, 5, 30),
});
type Stop = typeof stop extends fc.Arbitrary<infer T> ? T : never;

const facts = fc.record({
  fuelL: whole(60, 130),
  secondFuelL: fc.constantFrom(0, 20, 40),
  waterL: whole(40, 90),
  washingL: fc.constantFrom(0, 25),
  cans: fc.record({ fuel: whole(0, 5), water: whole(0, 5) }),
  percentPer100Kg: whole(0, 8),
  /** Permitted beyond full tanks and empty cans, kg. */
  leftKg: whole(-20, 150),
  crew: fc.boolean(),
  /** Of the tanks, aboard at the start. */
  startShare: fc.constantFrom(1, 1, 0.7),
  shareOfNeed: fc.constantFrom(0, 0.1, 0.5),
  tanksEmpty: fc.constantFrom('in-order' as const, 'together' as const, null),
});
type Facts = typeof facts extends fc.Arbitrary<infer T> ? T : never;

function rigOf(drawn: Facts): RigFile {
  const { fuelL, secondFuelL, waterL, washingL, cans, crew } = drawn;
  const rig: RigFile = {
    fuel: {
      kind: 'diesel',
      litresPer100Km: { low: 9, typical: 10, high: 11 },
      tanks: [
        { name: 'main', litres: fuelL },
        ...(secondFuelL === 0 ? [] : [{ name: 'second', litres: secondFuelL, unusableLitres: 1 }]),
      ],
      cans: { litres: 20, owned: cans.fuel, emptyKg: 4 },
      reserve: { litres: 4, shareOfNeed: drawn.shareOfNeed },
    },
    water: {
      ...(crew ? {} : { litresPerDay: { low: 5, typical: 8, high: 12 } }),
      tanks: [
        { name: 'main', litres: waterL },
        ...(washingL === 0 ? [] : [{ name: 'shower', litres: washingL, grade: 'washing' as const }]),
      ],
      cans: { litres: 10, owned: cans.water, emptyKg: 1 },
      reserve: { litres: 1 },
    },
    ...(crew ? { crew: { people: [{ count: 2, level: 'careful' as const }] } } : {}),
    pace: { hoursPerDay: 8, kmPerHour: { slow: 50, typical: 60, fast: 70 } },
  };
  const vehicle = {
    kerbKg: 2200,
    includes: { fuelPercent: 0, driverKg: 75 },
    ...(drawn.tanksEmpty === null ? {} : { tanksEmpty: drawn.tanksEmpty }),
  };
  const fullKg = massWithFullTanks({ ...rig, vehicle })!;
  return {
    ...rig,
    fuel: {
      ...rig.fuel,
      observed: { surface: 'unknown', massKg: fullKg - 100 },
      loadPercentPer100Kg: drawn.percentPer100Kg,
    },
    vehicle: { ...vehicle, permitted: { totalKg: fullKg + drawn.leftKg } },
  };
}

const idsOf = ({ what }: Stop, index: number): string[] => [
  ...(what === 'water' ? [] : [`node/${index}1`]),
  ...(what === 'fuel' ? [] : [`node/${index}2`]),
];

function tripOf(stops: readonly Stop[]): NonNullable<TripFile['plan']> {
  return {
    stops: stops.flatMap((each, index) =>
      idsOf(each, index).map((id) => ({
        id,
        ...(each.mostL === 0 ? {} : { mostLitres: { fuel: each.mostL, water: each.mostL } }),
        waitHours: each.waitHours,
      })),
    ),
  };
}

describe('a plan with everything told', () => {
  it('is never refused by its own simulation: reserves, masses and levels hold', { tags: 'slow' }, () => {
    let found = 0;
    let safe = 0;
    fc.assert(
      fc.property(
        fc.array(stop, { minLength: 6, maxLength: 14 }),
        facts,
        fc.array(whole(0, 2500), { minLength: 2, maxLength: 25 }),
        (stops, drawn, heights) => {
          const document = equatorDocument(LENGTH_KM, 3);
          document.parts[0]!.segments[0]!.ele.forEach((_, index, ele) => {
            ele[index] = heights[Math.floor((index / ele.length) * heights.length)]!;
          });
          const features = stops.flatMap((each, index) =>
            idsOf(each, index).map((id) => {
              const pump = each.kindOnly ? { amenity: 'fuel' } : DIESEL;
              return pointFeature(id, each.km, id.endsWith('1') ? pump : TAP, each.offKm);
            }),
          );
          const input = inputOf({ document, rig: rigOf(drawn), features });
          const { fuelL, waterL, startShare } = drawn;
          const aboard =
            startShare === 1
              ? {}
              : { aboard: { fuelLitres: fuelL * startShare, waterLitres: waterL * startShare } };
          const trip: TripFile = { ...input.trip, ...aboard, plan: tripOf(stops) };
          const outcome = reckonTrip({ ...input, trip });
          if (!outcome.ok) throw new Error(outcome.refusal.code);
          const options = { solver, seconds: 30, clock: () => 0 };
          const { driven: held } = planCarry(outcome.value, options);
          if (held === null) return;
          // These throw as well where what was chosen does not hold when it is driven.
          if (oneFailure(outcome.value, held, options).status === 'found') safe += 1;
          const basis = basisOf(outcome.value, held);
          whatIf(outcome.value, basis);
          gaugeOf(basis, turnBacksOf(basis));
          found += 1;
          const { legs: driven, choice } = held;
          expect(massesAlong(outcome.value.analysis.rig, choice.cans, driven)!.over).toEqual([]);
          for (const commodity of COMMODITIES) {
            for (const { marginL, levels } of driven[commodity]) {
              expect(marginL).toBeGreaterThanOrEqual(-1e-6);
              const totals = levels.map(({ tankL, cansL }) => cansL.reduce((sum, can) => sum + can, tankL));
              totals.slice(1).forEach((total, index) => {
                // Climbs are kept within a hundredth of a litre.
                expect(total).toBeLessThanOrEqual(totals[index]! + 0.02);
              });
            }
          }
        },
      ),
      { numRuns: 10, seed: 20_270_109 },
    );
    expect(found).toBeGreaterThan(3);
    expect(safe).toBeGreaterThan(1);
  });
});
