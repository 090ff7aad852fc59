import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { COMMODITIES } from '../../../server/core/quantity/commodities.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { reckoned } from '../../helpers/reckoned.ts';
import { oneFailure, planCarry } from './by-hand/contracted.ts';

/** A supply at a share of the way: how fast it flows, how long it is waited for, how much it gives at the most. */
const supplies = fc.array(
  fc.record({
    percent: fc.integer({ min: 1, max: 99 }),
    isFuel: fc.boolean(),
    litresPerMinute: fc.constantFrom(0.01, 0.05, 0.1, 0.3, 1, 10),
    waitHours: fc.constantFrom(0, 0.5, 2, 5, 9, 20, 30),
    mostLitres: fc.option(fc.integer({ min: 10, max: 60 }), { freq: 3 }),
  }),
  { minLength: 1, maxLength: 6 },
);
const drives = fc.record({
  lengthKm: fc.integer({ min: 200, max: 1200 }),
  supplies,
  waterL: fc.integer({ min: 45, max: 80 }),
  fuelL: fc.integer({ min: 50, max: 127 }),
  withSand: fc.boolean(),
});

type Drive = typeof drives extends fc.Arbitrary<infer D> ? D : never;

const rigOf = (fuelL: number, waterL: number): RigFile => ({
  ...EXAMPLE_RIG,
  fuel: {
    ...EXAMPLE_RIG.fuel,
    tanks: [{ name: 'main', litres: fuelL }],
    reserve: { km: 20, shareOfNeed: 0 },
    perHour: { idling: 1, heater: 0.3 },
    hours: { idlingPerDay: 1, heaterPerNight: 2 },
  },
  water: { ...EXAMPLE_RIG.water, tanks: [{ name: 'tank', litres: waterL }], reserve: { days: 1 } },
});

function inputFor({ lengthKm, supplies, waterL, fuelL, withSand }: Drive) {
  const spring = { natural: 'spring', drinking_water: 'yes' };
  const named = supplies.map((supply, index) => ({ ...supply, id: `node/${index + 1}`, index }));
  return inputOf({
    document: equatorDocument(lengthKm),
    rig: rigOf(fuelL, waterL),
    features: named.map(({ id, percent, index, isFuel }) =>
      pointFeature(id, (percent * lengthKm) / 100 + index * 0.013, isFuel ? DIESEL : spring),
    ),
    trip: {
      ...inputOf().trip,
      surfaces: withSand ? [{ fromKm: lengthKm / 3, toKm: lengthKm / 2, surface: 'sand' }] : [],
      waterNotes: named
        .filter(({ isFuel }) => !isFuel)
        .map(({ id, litresPerMinute }) => ({ id, on: '2026-05-01', saltOk: true, litresPerMinute })),
      plan: {
        mostCans: { fuel: 1, water: 1 },
        stops: named.map(({ id, waitHours, mostLitres, isFuel }) => ({
          id,
          waitHours,
          ...(mostLitres === null || isFuel ? {} : { mostLitres: { water: mostLitres } }),
        })),
      },
    },
  });
}

it('a plan with waiting, slow sources and sand keeps its reserves when it is driven, and so does one against a failure', {
  tags: 'slow',
}, async () => {
  const options = { solver: await loadSolver(), seconds: 30, clock: () => 0 };
  let found = 0;
  fc.assert(
    fc.property(drives, (drive) => {
      const trip = reckoned(inputFor(drive));
      // Either throws where what was chosen does not hold.
      const { driven } = planCarry(trip, options);
      if (driven === null) return;
      found += 1;
      for (const commodity of COMMODITIES)
        for (const { marginL } of driven.legs[commodity]) expect(marginL).toBeGreaterThanOrEqual(-1e-6);
      oneFailure(trip, driven, options);
    }),
    { numRuns: 150, seed: 20_261_130 },
  );
  expect(found).toBeGreaterThan(10);
});

it('spends the night at a water that was chosen so, and says it, where filling ends before the day in the end', {
  tags: 'slow',
}, async () => {
  // From empty 45 l take 2.6 h, until the hours of the day are over; what is filled in the end takes half of that.
  const drive: Drive = {
    lengthKm: 567,
    supplies: [
      { percent: 49, isFuel: false, litresPerMinute: 0.3, waitHours: 0.5, mostLitres: null },
      { percent: 1, isFuel: false, litresPerMinute: 0.01, waitHours: 0, mostLitres: null },
    ],
    waterL: 45,
    fuelL: 100,
    withSand: true,
  };
  const options = { solver: await loadSolver(), seconds: 30, clock: () => 0 };
  const input = inputFor(drive);
  // A can that is owned would be carried rather than wait.
  const rig = { ...input.rig, water: { ...input.rig.water, cans: { litres: 20, owned: 0 } } };
  const { plan, driven } = planCarry(reckoned({ ...input, rig }), options);
  for (const { marginL } of driven?.legs.water ?? []) expect(marginL).toBeGreaterThanOrEqual(-1e-6);
  const [night] = plan.restsOn.filter(({ code }) => code === 'plan-night-at-supply');
  expect(night?.fromKm).toBeCloseTo(277.83, 2);
});
