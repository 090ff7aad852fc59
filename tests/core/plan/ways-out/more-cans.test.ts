import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { TripFile } from '../../../../server/contract/trip.ts';
import type { Reckoned } from '../../../../server/core/analyse/analyse.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { questionOf } from '../../../../server/core/plan/question/question-of.ts';
import { canBeDone } from '../../../../server/core/plan/solve/can-be-done.ts';
import { fewestMoreCans } from '../../../../server/core/plan/ways-out/fewest-cans.ts';
import { COMMODITIES } from '../../../../server/core/quantity/commodities.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature, TAP } from '../../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { reckoned } from '../../../helpers/reckoned.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

interface Stop {
  km: number;
  offKm: number;
  fuel: boolean;
  mostL: number | null;
}

const stop: fc.Arbitrary<Stop> = fc.record({
  km: fc.integer({ min: 1, max: 79 }).map((step) => step * 20),
  offKm: fc.constantFrom(0, 0, 3),
  fuel: fc.boolean(),
  mostL: fc.option(fc.integer({ min: 20, max: 90 }), { freq: 2 }),
});

/** 1,600 km; water without reserve, small cans, so that several are missing. */
function tripOf(stops: readonly Stop[]): Reckoned {
  const rig: RigFile = {
    ...EXAMPLE_RIG,
    fuel: { ...EXAMPLE_RIG.fuel, cans: { litres: 20, owned: 1 } },
    water: { ...EXAMPLE_RIG.water, cans: { litres: 20, owned: 0 }, reserve: { litres: 0 } },
  };
  const features = stops.map(({ km, offKm, fuel }, index) =>
    pointFeature(`node/${index + 1}`, km, fuel ? DIESEL : TAP, offKm),
  );
  const asked: TripFile['plan'] = {
    stops: stops.flatMap(({ fuel, mostL }, index) =>
      mostL === null ? [] : [{ id: `node/${index + 1}`, mostLitres: { [fuel ? 'fuel' : 'water']: mostL } }],
    ),
  };
  const input = inputOf({ document: equatorDocument(1600, 10), rig, features });
  return reckoned({ ...input, trip: { ...input.trip, plan: asked } });
}

const options = () => ({ solver, seconds: 30, clock: () => 0 });

describe('the fewest cans to get', () => {
  it('are as many as trying every number of both finds', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(fc.array(stop, { minLength: 2, maxLength: 5 }), (stops) => {
        const trip = tripOf(stops);
        const answer = fewestMoreCans({ reckoned: trip, open: COMMODITIES, anyMass: false }, options());
        const does = (fuel: number, water: number) =>
          canBeDone(questionOf(trip, { mostCans: { fuel: 1 + fuel, water } }).question, options()) === true;
        const total = answer.status === 'found' ? answer.mostCans.fuel - 1 + answer.mostCans.water : 9;
        if (answer.status === 'found')
          expect(does(answer.mostCans.fuel - 1, answer.mostCans.water)).toBe(true);
        for (let fewer = 0; fewer < Math.min(total, 9); fewer += 1)
          for (let fuel = 0; fuel <= fewer; fuel += 1) expect(does(fuel, fewer - fuel)).toBe(false);
      }),
      { numRuns: 25, seed: 4 },
    );
  });

  it('may be of one commodity only, and are none where that does not help', () => {
    // Fuel lasts 647 km, water 3 days of 245 km: both are missing.
    const trip = tripOf([{ km: 700, offKm: 0, fuel: true, mostL: null }]);
    const asked = (open: readonly ('fuel' | 'water')[]) =>
      fewestMoreCans({ reckoned: trip, open, anyMass: false }, options());
    expect(asked(COMMODITIES)).toMatchObject({ status: 'found' });
    for (const commodity of COMMODITIES) expect(asked([commodity])).toEqual({ status: 'none' });
  });

  it('are none where none may be got, be there a plan without or not', () => {
    // 245 km are a day: nothing is missing.
    const trip = reckoned(inputOf({ document: equatorDocument(245) }));
    expect(fewestMoreCans({ reckoned: trip, open: [], anyMass: false }, options())).toEqual({
      status: 'none',
    });
  });

  it('are counted over both commodities, be they many of one and none of the other', () => {
    // 2,000 km at 10 l/100 km: 100 of 200 l are missing, five cans. By the pump at km 600, where eight days go by, two
    // cans are enough, but then eight days of 10 l are missing: four cans more.
    const range = { low: 10, typical: 10, high: 10 };
    const rig: RigFile = {
      fuel: {
        kind: 'diesel',
        litresPer100Km: range,
        tanks: [{ name: 'main', litres: 100 }],
        cans: { litres: 20, owned: 0 },
        reserve: { litres: 0 },
      },
      water: {
        litresPerDay: range,
        tanks: [{ name: 'main', litres: 200 }],
        cans: { litres: 20, owned: 0 },
        reserve: { litres: 0 },
      },
      pace: { hoursPerDay: 10, kmPerHour: { slow: 10, typical: 10, fast: 10 } },
    };
    const input = inputOf({
      document: equatorDocument(2000),
      rig,
      features: [pointFeature('node/1', 600, DIESEL)],
    });
    const plan = { stops: [{ id: 'node/1', waitHours: 192 }] };
    const trip = reckoned({ ...input, trip: { ...input.trip, plan } });
    expect(fewestMoreCans({ reckoned: trip, open: COMMODITIES, anyMass: false }, options())).toEqual({
      status: 'found',
      mostCans: { fuel: 5, water: 0 },
      proven: true,
    });
  });

  it('may be more than forty in all', () => {
    const range = { low: 10, typical: 10, high: 10 };
    // 310 km at 10 l/100 km, and three days with their nights and an hour of 10 l a day, 30.4 l: 21 cans of a litre of
    // fuel beyond 10 l, 25 of water beyond 6.
    const rig: RigFile = {
      fuel: {
        kind: 'diesel',
        litresPer100Km: range,
        tanks: [{ name: 'main', litres: 10 }],
        cans: { litres: 1, owned: 0 },
        reserve: { litres: 0 },
      },
      water: {
        litresPerDay: range,
        tanks: [{ name: 'main', litres: 6 }],
        cans: { litres: 1, owned: 0 },
        reserve: { litres: 0 },
      },
      pace: { hoursPerDay: 10, kmPerHour: { slow: 10, typical: 10, fast: 10 } },
    };
    const trip = reckoned(inputOf({ document: equatorDocument(310), rig }));
    expect(fewestMoreCans({ reckoned: trip, open: COMMODITIES, anyMass: false }, options())).toEqual({
      status: 'found',
      mostCans: { fuel: 21, water: 25 },
      proven: true,
    });
  });
});
