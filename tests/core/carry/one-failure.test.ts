import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { MipSolver } from '../../../server/core/carry/mip.ts';
import { solveCarry } from '../../../server/core/carry/solve.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { FUEL_L_PER_KM, problemOf, type SmallRoute, smallRoute } from './small-routes.ts';

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

function holds(
  route: SmallRoute,
  points: { atKm: number; detourKm: number }[],
  cans: number,
  spendReserve: boolean,
): boolean {
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
    const onKm = next.atKm - from.atKm + from.detourKm + 2 * to.detourKm + next.detourKm;
    return left(onKm, spendReserve) >= -1e-9 || left(2 * thereKm, spendReserve) >= -1e-9;
  });
}

describe('a plan against one failure', () => {
  it.each([false, true])(
    'has the fewest cans of all choices of stops (reserve spent: %s)',
    (spendReserve) => {
      let found = 0;
      fc.assert(
        fc.property(smallRoute(), (drawn) => {
          const route = fuelOnly(drawn);
          const problem = { ...problemOf(route), oneFailure: { spendReserve } };
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

  it('never takes fewer cans than the plain plan', () => {
    fc.assert(
      fc.property(smallRoute(), (drawn) => {
        const problem = problemOf(fuelOnly(drawn));
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
