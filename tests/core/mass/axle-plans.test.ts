import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Commodity } from '../../../server/contract/common.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import { axleShares } from '../../../server/core/mass/statics.ts';
import { drive } from '../../../server/core/plan/drive/drive.ts';
import { massesAlong } from '../../../server/core/plan/drive/masses.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { massRoomOf } from '../../../server/core/plan/question/mass-room.ts';
import { solveCarry } from '../../../server/core/plan/solve/solve.ts';
import { COMMODITIES } from '../../../server/core/quantity/commodities.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { type HandLeg, handLegs } from '../plan/by-hand/hand-legs.ts';
import { questionOf, rigOf, type SmallRoute, smallRoute } from '../plan/by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const WHEELBASE_M = 3;
/** Diesel at the upper bound of its standard (check-values F1), water at 1 (K15). */
const KG_PER_L = { fuel: 0.845, water: 1 };
const EMPTY_KG = { fuel: 2, water: 1 };
type Axle = 'front' | 'rear';
const AXLES: Axle[] = ['front', 'rear'];

/** Where tanks and cans are, m behind the front axle, and what each axle may bear beyond full tanks, kg. */
interface Layout {
  tankM: Record<Commodity, number>;
  canM: Record<Commodity, number>;
  leftKg: Record<Axle, number>;
}

const byCommodity = (...metres: number[]) =>
  fc.record({ fuel: fc.constantFrom(...metres), water: fc.constantFrom(...metres) });

/** Cans ahead of the front axle, between the axles and behind the rear one. */
const layout: fc.Arbitrary<Layout> = fc.record({
  tankM: byCommodity(0.6, 1.5, 2.4, 3.3),
  canM: byCommodity(-0.6, 1, 2.2, 3.6, 4.2),
  leftKg: fc.record({ front: fc.integer({ min: -15, max: 40 }), rear: fc.integer({ min: -15, max: 60 }) }),
});

/** What a mass puts on an axle (check-values V1). */
const on = (axle: Axle, kg: number, xM: number): number =>
  axleShares(kg, xM, WHEELBASE_M)[axle === 'front' ? 'frontKg' : 'rearKg'];

/** On an axle at the worst: relief by what may be gone does not count. */
const atWorst = (axle: Axle, kg: number, xM: number): number => Math.max(0, on(axle, kg, xM));

function rigWith(route: SmallRoute, { tankM, canM, leftKg }: Layout): RigFile {
  const rig = rigOf(route);
  const place = (behindFrontAxleM: number) => ({ behindFrontAxleM, heightM: 1 });
  const permittedKg = (axle: Axle) =>
    500 +
    COMMODITIES.reduce(
      (sum, each) => sum + atWorst(axle, route.tankL[each] * KG_PER_L[each], tankM[each]),
      0,
    ) +
    leftKg[axle];
  const store = (each: Commodity) => ({
    tanks: [{ name: 'main', litres: route.tankL[each], position: place(tankM[each]) }],
    cans: { litres: route.canL[each], owned: 0, emptyKg: EMPTY_KG[each], position: place(canM[each]) },
  });
  return {
    ...rig,
    fuel: { ...rig.fuel, ...store('fuel') },
    water: { ...rig.water, ...store('water') },
    vehicle: {
      kerbKg: 1000,
      includes: { fuelPercent: 0, waterPercent: 0, driverKg: 75 },
      axleKg: { front: 500, rear: 500 },
      wheelbaseM: WHEELBASE_M,
      people: [{ kg: 75, position: place(1.5) }],
      permitted: { frontKg: permittedKg('front'), rearKg: permittedKg('rear') },
    },
  };
}

/** Fewest cans over every choice of stops: every axle bears every can of a leg full, as often as legs meet. */
function fewestByBruteForce(route: SmallRoute, { tankM, canM, leftKg }: Layout): number | null {
  const chains = (commodity: Commodity) => {
    const places = route.stops
      .filter(({ offers }) => offers === commodity || offers === 'both')
      .map(({ atKm }) => atKm)
      .sort((a, b) => a - b);
    return Array.from({ length: 2 ** places.length }, (_, bits) =>
      handLegs(route, commodity, [
        0,
        ...places.filter((_place, index) => (bits >> index) & 1),
        route.lengthKm,
      ]),
    ).filter((legs) => legs !== null);
  };
  const onAxle = (axle: Axle, commodity: Commodity, { cans, lessL }: HandLeg) => {
    const lessKg = lessL * KG_PER_L[commodity];
    const inTank = atWorst(axle, lessKg, tankM[commodity]);
    // Where cans are poured the tank fills up again, and it is they that hold so much less then.
    const less = cans === 0 ? inTank : Math.min(inTank, atWorst(axle, lessKg, canM[commodity]));
    return atWorst(axle, cans * route.canL[commodity] * KG_PER_L[commodity], canM[commodity]) - less;
  };
  let best: number | null = null;
  for (const fuel of chains('fuel')) {
    for (const water of chains('water')) {
      const needed = {
        fuel: Math.max(...fuel.map(({ cans }) => cans)),
        water: Math.max(...water.map(({ cans }) => cans)),
      };
      // Empty cans are aboard all the way, so what they relieve counts: also that of one more than is filled.
      for (let fuelCans = needed.fuel; fuelCans <= route.mostCans.fuel; fuelCans += 1) {
        for (let waterCans = needed.water; waterCans <= route.mostCans.water; waterCans += 1) {
          const cans = fuelCans + waterCans;
          if (best !== null && cans >= best) continue;
          const fits = AXLES.every((axle) => {
            const emptyKg =
              on(axle, fuelCans * EMPTY_KG.fuel, canM.fuel) +
              on(axle, waterCans * EMPTY_KG.water, canM.water);
            return fuel.every((one) =>
              water.every(
                (other) =>
                  Math.min(one.toKm, other.toKm) <= Math.max(one.fromKm, other.fromKm) ||
                  emptyKg + onAxle(axle, 'fuel', one) + onAxle(axle, 'water', other) <= leftKg[axle] + 1e-6,
              ),
            );
          });
          if (fits) best = cans;
        }
      }
    }
  }
  return best;
}

describe('permitted axle loads', () => {
  it('leave the fewest cans of all choices of stops, and hold when the plan is driven', {
    tags: 'slow',
  }, () => {
    const bound = { front: 0, rear: 0 };
    let withCans = 0;
    fc.assert(
      fc.property(smallRoute(5), layout, (drawn, placed) => {
        const route: SmallRoute = {
          ...drawn,
          stops: drawn.stops.map((stop) => ({ ...stop, detourKm: 0, evidence: 'stated' })),
        };
        const rig = rigWith(route, placed);
        const problem = { ...questionOf(route), room: massRoomOf(rig) };
        const options = { solver, seconds: 60, clock: () => 0 };
        const solved = solveCarry(problem, options);
        const cans = solved.status === 'found' ? solved.choice.cans.fuel + solved.choice.cans.water : null;
        expect(cans).toBe(fewestByBruteForce(route, placed));
        for (const axle of AXLES) {
          const free = { ...placed, leftKg: { ...placed.leftKg, [axle]: 1000 } };
          if (fewestByBruteForce(route, free) !== cans) bound[axle] += 1;
        }
        if (solved.status !== 'found') return;
        if (solved.choice.cans.fuel + solved.choice.cans.water > 0) withCans += 1;
        const driven = drive(problem.sides, solved.choice);
        expect(massesAlong(rig, solved.choice.cans, driven)!.over).toEqual([]);
        for (const commodity of COMMODITIES)
          for (const leg of driven[commodity]) expect(leg.marginL).toBeGreaterThanOrEqual(-1e-6);
      }),
      { numRuns: 300, seed: 20_270_103 },
    );
    // Both axles bind, and cans are carried within them, or the comparison would say little.
    expect(bound.front).toBeGreaterThan(10);
    expect(bound.rear).toBeGreaterThan(10);
    expect(withCans).toBeGreaterThan(10);
  });
});

describe('several tanks that empty one after the other', () => {
  it('are over a limit where the first runs empty, though neither at its start nor at its end', () => {
    // The tank behind the rear axle relieves the front until it is empty; then the one above the front axle falls.
    const place = (behindFrontAxleM: number) => ({ behindFrontAxleM, heightM: 1 });
    const route: SmallRoute = {
      lengthKm: 700,
      stops: [],
      tankL: { fuel: 80, water: 20 },
      startL: { fuel: 80, water: 20 },
      canL: { fuel: 10, water: 10 },
      reserveL: { fuel: 0, water: 0 },
      shareOfNeed: { fuel: 0, water: 0 },
      mostCans: { fuel: 0, water: 0 },
      cansAtStart: true,
      waterLPerDay: 1,
    };
    const plain = rigOf(route);
    const rig = (frontKg: number): RigFile => ({
      ...plain,
      fuel: {
        ...plain.fuel,
        tanks: [
          { name: 'tail', litres: 40, position: place(4.5) },
          { name: 'nose', litres: 40, position: place(0) },
        ],
      },
      water: { ...plain.water, tanks: [{ name: 'main', litres: 20, position: place(3) }] },
      vehicle: {
        kerbKg: 1000,
        includes: { fuelPercent: 0, waterPercent: 0, driverKg: 75 },
        axleKg: { front: 500, rear: 500 },
        wheelbaseM: WHEELBASE_M,
        people: [{ kg: 75, position: place(1.5) }],
        permitted: { frontKg },
        tanksEmpty: 'in-order',
      },
    });
    const problem = questionOf(route);
    const solved = solveCarry(problem, { solver, seconds: 60, clock: () => 0 });
    if (solved.status !== 'found') throw new Error(solved.status);
    const driven = drive(problem.sides, solved.choice);
    const masses = (frontKg: number) => massesAlong(rig(frontKg), { fuel: 0, water: 0 }, driven)!;
    // 40 l in the nose: 33.8 kg on the front axle, at km 400 with nothing to relieve it.
    const mostKg = 500 + 40 * 0.845;
    expect(Math.max(...masses(600).levels.map(({ frontKg }) => frontKg!))).toBeCloseTo(mostKg, 6);
    expect(masses(mostKg + 0.1).over).toEqual([]);
    const [over] = masses(mostKg - 1).over;
    expect(over).toMatchObject({ limit: 'front' });
    expect(over!.atM).toBeCloseTo(400_000, 3);
    expect(over!.overKg).toBeCloseTo(1, 6);
  });
});
