import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Commodity } from '../../../server/contract/common.ts';
import { drive } from '../../../server/core/plan/drive/drive.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { solveCarry } from '../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { failuresOf } from './by-hand/contracted.ts';
import {
  FUEL_L_PER_KM,
  KM_PER_DAY,
  questionOf,
  type SmallRoute,
  type SmallStop,
  smallRoute,
} from './by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Fuel only, evidence all alike: water is plenty. */
const fuelOnly = (drawn: SmallRoute): SmallRoute => ({
  ...drawn,
  tankL: { ...drawn.tankL, water: 1000 },
  startL: { ...drawn.startL, water: 1000 },
  stops: drawn.stops.map((stop) => ({ ...stop, offers: 'fuel', evidence: 'stated' })),
});

/**
 * Fewest cans over every choice of stops, every leg left with all of them full: with them each leg holds, and from each
 * stop that fails either the next or the one before is reached.
 */
function fewestByBruteForce(route: SmallRoute, spendReserve: boolean): number | null {
  const stops = [...route.stops].sort((a, b) => a.atKm - b.atKm);
  let best: number | null = null;
  for (let bits = 0; bits < 2 ** stops.length; bits += 1) {
    const points = [
      { atKm: 0, detourKm: 0 },
      ...stops.filter((_, index) => (bits >> index) & 1),
      { atKm: route.lengthKm, detourKm: 0 },
    ];
    for (let cans = 0; cans <= route.mostCans.fuel; cans += 1) {
      if (best !== null && cans >= best) break;
      if (holds(route, points, cans, spendReserve)) best = cans;
    }
  }
  return best;
}

interface Point {
  atKm: number;
  detourKm: number;
  id?: string;
}

function holds(route: SmallRoute, points: Point[], cans: number, spendReserve: boolean): boolean {
  return points.slice(1).every((to, index) => {
    const from = points[index]!;
    const fillable = index > 0 || route.cansAtStart;
    const tankL = index === 0 ? Math.min(route.startL.fuel, route.tankL.fuel) : route.tankL.fuel;
    const aboardL = tankL + (fillable ? cans * route.canL.fuel : 0);
    const left = (km: number, spend: boolean) => {
      const needL = km * FUEL_L_PER_KM;
      return aboardL - needL - (spend ? 0 : route.reserveL.fuel + route.shareOfNeed.fuel * needL);
    };
    const thereKm = to.atKm - from.atKm + from.detourKm + to.detourKm;
    if (left(thereKm, false) < -1e-9) return false;
    const next = points[index + 2];
    if (next === undefined) return true;
    // Of the same object as the supply before: if it fails the crew has found out there, and could not go on by here.
    if (to.id !== undefined && to.id === from.id) return true;
    const failsToo = to.id !== undefined && to.id === next.id;
    const onKm = next.atKm - from.atKm + from.detourKm + 2 * to.detourKm + next.detourKm;
    return (!failsToo && left(onKm, spendReserve) >= -1e-9) || left(2 * thereKm, spendReserve) >= -1e-9;
  });
}

/** Of both commodities, every leg left with all cans full: with them all hold, and each used stop may fail for both. */
function bothHold(
  route: SmallRoute,
  used: Record<Commodity, SmallStop[]>,
  cans: Record<Commodity, number>,
  spendReserve: boolean,
): boolean {
  const offered = (commodity: Commodity) =>
    route.stops.filter(({ offers }) => offers === commodity || offers === 'both');
  const legs = { fuel: legsOf('fuel'), water: legsOf('water') };

  function legsOf(commodity: Commodity) {
    const other = commodity === 'fuel' ? 'water' : 'fuel';
    const end = { atKm: 0, detourKm: 0 };
    const points = [
      end,
      ...[...used[commodity]].sort((a, b) => a.atKm - b.atKm),
      { ...end, atKm: route.lengthKm },
    ];
    return points.slice(1).map((to, index) => {
      const from = points[index]!;
      const fillable = index > 0 || route.cansAtStart;
      const tankL =
        index === 0 ? Math.min(route.startL[commodity], route.tankL[commodity]) : route.tankL[commodity];
      const aboardL = tankL + (fillable ? cans[commodity] * route.canL[commodity] : 0);
      const viaKm = (toKm: number, ends: { atKm: number }[], made: SmallStop[]) =>
        made
          .filter(
            (halt) =>
              halt.atKm > from.atKm && halt.atKm <= toKm && ends.every(({ atKm }) => atKm !== halt.atKm),
          )
          .reduce((sum, { detourKm }) => sum + 2 * detourKm, 0);
      const needL = (km: number) =>
        commodity === 'fuel' ? km * FUEL_L_PER_KM : (km / KM_PER_DAY) * route.waterLPerDay;
      const bears = (litres: number, spend: boolean) =>
        aboardL - litres - (spend ? 0 : route.reserveL[commodity] + route.shareOfNeed[commodity] * litres) >=
        -1e-9;
      return {
        commodity,
        from,
        to,
        holds: bears(
          needL(to.atKm - from.atKm + from.detourKm + to.detourKm + viaKm(to.atKm, [to], used[other])),
          false,
        ),
        /** Past its end to another place, every halt that there is made on the way, its end gone to once for both. */
        on: (next: { atKm: number; detourKm: number }) =>
          bears(
            needL(
              next.atKm -
                from.atKm +
                from.detourKm +
                2 * to.detourKm +
                next.detourKm +
                viaKm(next.atKm, [next, to], offered(other)),
            ),
            spendReserve,
          ),
        /** To a place and home again, detours on the way once. */
        back: (place: { atKm: number; detourKm: number }, ends: { atKm: number }[]) => {
          const via = viaKm(place.atKm, ends, offered(other));
          const outAndHome = 2 * (place.atKm - from.atKm + from.detourKm + place.detourKm);
          return bears(needL(outAndHome + via), spendReserve);
        },
      };
    });
  }

  const all = [...legs.fuel, ...legs.water];
  if (!all.every(({ holds }) => holds)) return false;
  return [...new Set([...used.fuel, ...used.water])].every((failing) => {
    const ending = all.filter(({ to }) => to === failing);
    const on = ending.every((leg) => {
      const own = legs[leg.commodity];
      return leg.on(own[own.indexOf(leg) + 1]!.to);
    });
    if (on) return true;
    const covering = all.filter(({ from, to }) => from.atKm < failing.atKm && to.atKm > failing.atKm);
    return (
      ending.every((leg) => leg.back(failing, [failing])) &&
      covering.every((leg) => leg.back({ ...failing, detourKm: 0 }, []))
    );
  });
}

function fewestOfBoth(route: SmallRoute, spendReserve: boolean): number | null {
  const subsets = (commodity: Commodity) => {
    const stops = route.stops.filter(({ offers }) => offers === commodity || offers === 'both');
    return Array.from({ length: 2 ** stops.length }, (_, bits) =>
      stops.filter((_stop, index) => (bits >> index) & 1),
    );
  };
  let best: number | null = null;
  for (const fuel of subsets('fuel')) {
    for (const water of subsets('water')) {
      for (let ofFuel = 0; ofFuel <= route.mostCans.fuel; ofFuel += 1) {
        for (let ofWater = 0; ofWater <= route.mostCans.water; ofWater += 1) {
          if (best !== null && ofFuel + ofWater >= best) break;
          if (bothHold(route, { fuel, water }, { fuel: ofFuel, water: ofWater }, spendReserve))
            best = ofFuel + ofWater;
        }
      }
    }
  }
  return best;
}

describe('a plan against one failure', () => {
  it.each([false, true])(
    'has the fewest cans of all choices of stops (reserve spent: %s)',
    { tags: 'slow' },
    (spendReserve) => {
      let found = 0;
      fc.assert(
        fc.property(smallRoute(), (drawn) => {
          const route = fuelOnly(drawn);
          const problem = { ...questionOf(route), oneFailure: { spendReserve } };
          const solved = solveCarry(problem, { solver, seconds: 60, clock: () => 0 });
          const cans = solved.status === 'found' ? solved.choice.cans.fuel : null;
          expect(cans).toBe(fewestByBruteForce(route, spendReserve));
          if (cans !== null && cans > 0) found += 1;
        }),
        { numRuns: 400, seed: 20_260_707 },
      );
      expect(found).toBeGreaterThan(10);
    },
  );

  it('holds when an object that is passed twice fails at both passings', { tags: 'slow' }, () => {
    let twice = 0;
    fc.assert(
      fc.property(smallRoute(), fc.integer({ min: 1, max: 3 }), (drawn, objects) => {
        const plain = fuelOnly(drawn);
        const inOrder = [...plain.stops].sort((a, b) => a.atKm - b.atKm);
        const stops = inOrder.map((stop, index) => ({ ...stop, id: `node/${index % objects}` }));
        const problem = questionOf({ ...plain, stops });
        const options = { solver, seconds: 60, clock: () => 0 };
        const solved = solveCarry({ ...problem, oneFailure: { spendReserve: false } }, options);
        const cans = solved.status === 'found' ? solved.choice.cans.fuel : null;
        expect(cans).toBe(fewestByBruteForce({ ...plain, stops }, false));
        if (solved.status !== 'found') return;
        const legs = drive(problem.sides, solved.choice);
        const used = legs.fuel.map(({ to }) => to.id);
        if (new Set(used).size < used.length) twice += 1;
        for (const { at, to } of failuresOf({ question: problem, legs }, false))
          expect(to.id).not.toBe(at.id);
      }),
      { numRuns: 400, seed: 20_261_130 },
    );
    expect(twice).toBeGreaterThan(10);
  });

  it.each([false, true])(
    'sends both commodities one way, and has the fewest cans of all choices (reserve spent: %s)',
    { tags: 'slow' },
    (spendReserve) => {
      let found = 0;
      let dearer = 0;
      fc.assert(
        fc.property(smallRoute(4), (drawn) => {
          const route: SmallRoute = {
            ...drawn,
            stops: drawn.stops.map((stop) => ({ ...stop, evidence: 'stated' })),
          };
          const problem = questionOf(route);
          const options = { solver, seconds: 60, clock: () => 0 };
          const solved = solveCarry({ ...problem, oneFailure: { spendReserve } }, options);
          const total = (of: typeof solved) =>
            of.status === 'found' ? of.choice.cans.fuel + of.choice.cans.water : null;
          expect(total(solved)).toBe(fewestOfBoth(route, spendReserve));
          if (solved.status !== 'found') return;
          const { fuel, water } = solved.choice.legs;
          if (fuel.length > 1 && water.length > 1) found += 1;
          if (total(solved)! > total(solveCarry(problem, options))!) dearer += 1;
          // DrivenLegs, each failure is borne: failuresOf throws where one is not.
          const held = { question: problem, legs: drive(problem.sides, solved.choice) };
          const failures = failuresOf(held, spendReserve);
          expect(failures).toHaveLength(fuel.length - 1 + water.length - 1);
          for (const { at, next } of failures) {
            const ways = failures.filter((other) => other.at.atKm === at.atKm).map((other) => other.next);
            expect(new Set(ways)).toEqual(new Set([next]));
          }
        }),
        { numRuns: 500, seed: 20_261_126 },
      );
      expect(found).toBeGreaterThan(20);
      expect(dearer).toBeGreaterThan(5);
    },
  );

  it('never takes fewer cans than the plain plan', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(smallRoute(), (drawn) => {
        const problem = questionOf(fuelOnly(drawn));
        const options = { solver, seconds: 60, clock: () => 0 };
        const plain = solveCarry(problem, options);
        const safe = solveCarry({ ...problem, oneFailure: { spendReserve: true } }, options);
        if (safe.status !== 'found') return;
        if (plain.status !== 'found') throw new Error('a plan against one failure without a plain one');
        expect(safe.choice.cans.fuel).toBeGreaterThanOrEqual(plain.choice.cans.fuel);
      }),
      { numRuns: 100, seed: 20_260_708 },
    );
  });
});
