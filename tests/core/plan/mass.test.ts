import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Commodity } from '../../../server/contract/common.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import { drive } from '../../../server/core/plan/drive/drive.ts';
import { massesAlong } from '../../../server/core/plan/drive/masses.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { massRoomOf } from '../../../server/core/plan/question/mass-room.ts';
import { solveCarry } from '../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { handLegs } from './by-hand/hand-legs.ts';
import { questionOf, rigOf, type SmallRoute, smallRoute } from './by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Diesel at the upper bound of its standard, water at 1 (see densities). */
const KG_PER_L = { fuel: 0.845, water: 1 };
const EMPTY_KG = { fuel: 2, water: 1 };
const COMMODITIES: Commodity[] = ['fuel', 'water'];

/** The rig of a small route, whose permitted mass leaves `leftKg` for cans with both tanks full. */
function rigWith(route: SmallRoute, leftKg: number): RigFile {
  const rig = rigOf(route);
  return {
    ...rig,
    fuel: { ...rig.fuel, cans: { litres: route.canL.fuel, owned: 0, emptyKg: EMPTY_KG.fuel } },
    water: { ...rig.water, cans: { litres: route.canL.water, owned: 0, emptyKg: EMPTY_KG.water } },
    vehicle: {
      kerbKg: 1000,
      includes: { fuelPercent: 0, waterPercent: 0, driverKg: 75 },
      people: [{ kg: 75 }],
      permitted: {
        totalKg: 1000 + route.tankL.fuel * KG_PER_L.fuel + route.tankL.water * KG_PER_L.water + leftKg,
      },
    },
  };
}

/** Fewest cans over every choice of stops, no detours: as many as each leg needs, and tanks as short as it bears. */
function fewestByBruteForce(route: SmallRoute, leftKg: number): number | null {
  const chains = (commodity: Commodity) => {
    const places = route.stops
      .filter(({ offers }) => offers === commodity || offers === 'both')
      .map(({ atKm }) => atKm)
      .sort((a, b) => a - b);
    return Array.from({ length: 2 ** places.length }, (_, bits) =>
      legsOf(route, commodity, [0, ...places.filter((_place, index) => (bits >> index) & 1), route.lengthKm]),
    ).filter((legs) => legs !== null);
  };
  let best: number | null = null;
  for (const fuel of chains('fuel')) {
    for (const water of chains('water')) {
      const owned = {
        fuel: Math.max(...fuel.map(({ cans }) => cans)),
        water: Math.max(...water.map(({ cans }) => cans)),
      };
      const cans = owned.fuel + owned.water;
      if (best !== null && cans >= best) continue;
      const emptyKg = owned.fuel * EMPTY_KG.fuel + owned.water * EMPTY_KG.water;
      const fits = fuel.every((one) =>
        water.every(
          (other) =>
            Math.min(one.toKm, other.toKm) <= Math.max(one.fromKm, other.fromKm) ||
            emptyKg + one.kg + other.kg <= leftKg + 1e-6,
        ),
      );
      if (fits) best = cans;
    }
  }
  return best;
}

/** With what a leg weighs beyond full tanks. */
function legsOf(route: SmallRoute, commodity: Commodity, places: number[]) {
  return (
    handLegs(route, commodity, places)?.map((leg) => ({
      ...leg,
      kg: (leg.cans * route.canL[commodity] - leg.lessL) * KG_PER_L[commodity],
    })) ?? null
  );
}

describe('permitted masses', () => {
  it('leave the fewest cans of all choices of stops, and hold when the plan is driven', {
    tags: 'slow',
  }, () => {
    let bound = 0;
    fc.assert(
      fc.property(smallRoute(), fc.integer({ min: -20, max: 60 }), (drawn, leftKg) => {
        const route: SmallRoute = {
          ...drawn,
          stops: drawn.stops.map((stop) => ({ ...stop, detourKm: 0, evidence: 'stated' })),
        };
        const rig = rigWith(route, leftKg);
        const problem = { ...questionOf(route), room: massRoomOf(rig) };
        const options = { solver, seconds: 60, clock: () => 0 };
        const solved = solveCarry(problem, options);
        const cans = solved.status === 'found' ? solved.choice.cans.fuel + solved.choice.cans.water : null;
        expect(cans).toBe(fewestByBruteForce(route, leftKg));
        if (solved.status !== 'found') {
          if (solveCarry({ ...problem, room: null }, options).status === 'found') bound += 1;
          return;
        }
        const driven = drive(problem.sides, solved.choice);
        expect(massesAlong(rig, solved.choice.cans, driven)?.over).toEqual([]);
        for (const commodity of COMMODITIES) {
          for (const leg of driven[commodity]) {
            expect(leg.marginL).toBeGreaterThanOrEqual(-1e-6);
            if (leg.shortL > 0) bound += 1;
          }
        }
      }),
      { numRuns: 400, seed: 20_260_709 },
    );
    expect(bound).toBeGreaterThan(30);
  });

  it('takes a can on the rear for more than its mass on the rear axle', () => {
    const rig: RigFile = {
      ...rigWith(
        {
          tankL: { fuel: 40, water: 20 },
          startL: { fuel: 40, water: 20 },
          canL: { fuel: 10, water: 10 },
          reserveL: { fuel: 0, water: 0 },
          shareOfNeed: { fuel: 0, water: 0 },
          mostCans: { fuel: 2, water: 0 },
          cansAtStart: true,
          waterLPerDay: 1,
          lengthKm: 100,
          stops: [],
        },
        100,
      ),
    };
    const place = { behindFrontAxleM: 1.5, heightM: 1 };
    rig.fuel.tanks[0]!.position = place;
    rig.water.tanks[0]!.position = place;
    rig.fuel.cans!.position = { behindFrontAxleM: 4, heightM: 1 };
    rig.vehicle = {
      ...rig.vehicle!,
      wheelbaseM: 3,
      axleKg: { front: 500, rear: 500 },
      people: [{ kg: 75, position: place }],
      permitted: { rearKg: 700 },
    };
    const rear = massRoomOf(rig)!.limits.find(({ name }) => name === 'rear')!;
    // Moments about the front axle: m x / L (check-values V1).
    expect(rear.canKg.fuel.filling).toBeCloseTo((10 * 0.845 * 4) / 3, 9);
    expect(rear.leftKg).toBeCloseTo(700 - 500 - (40 * 0.845 + 20) / 2, 6);
  });
});
