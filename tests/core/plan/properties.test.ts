import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { solveCarry } from '../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { questionOf, type SmallRoute, smallRoute } from './by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Everything can be filled at the start, and evidence is all alike. */
const plain = (maxStops?: number) =>
  smallRoute(maxStops).map(
    (route): SmallRoute => ({
      ...route,
      startL: route.tankL,
      cansAtStart: true,
      mostCans: { fuel: 20, water: 20 },
      stops: route.stops.map((stop) => ({ ...stop, evidence: 'stated' })),
    }),
  );

/** Cans of the plan, both commodities; endless where there is none. */
function cansOf(route: SmallRoute): number {
  const solved = solveCarry(questionOf(route), { solver, seconds: 60, clock: () => 0 });
  return solved.status === 'found'
    ? solved.choice.cans.fuel + solved.choice.cans.water
    : Number.POSITIVE_INFINITY;
}

const runs = { numRuns: 150, seed: 20_260_710 };

describe('without permitted masses, with everything fillable at the start', () => {
  it('more tank never needs more cans', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(
        plain(),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 30 }),
        (route, fuel, water) => {
          const tankL = { fuel: route.tankL.fuel + fuel, water: route.tankL.water + water };
          expect(cansOf({ ...route, tankL, startL: tankL })).toBeLessThanOrEqual(cansOf(route));
        },
      ),
      runs,
    );
  });

  it('a stop that fails never makes it better', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(plain(), fc.nat(), (route, pick) => {
        const gone = pick % route.stops.length;
        const without = { ...route, stops: route.stops.filter((_stop, index) => index !== gone) };
        expect(cansOf(without)).toBeGreaterThanOrEqual(cansOf(route));
      }),
      runs,
    );
  });

  it('a higher reserve never needs fewer cans', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(
        plain(),
        fc.integer({ min: 0, max: 10 }),
        fc.integer({ min: 0, max: 10 }),
        (route, fuel, water) => {
          const reserveL = { fuel: route.reserveL.fuel + fuel, water: route.reserveL.water + water };
          expect(cansOf({ ...route, reserveL })).toBeGreaterThanOrEqual(cansOf(route));
        },
      ),
      runs,
    );
  });

  it('the reversed route is equally good', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(plain(), (route) => {
        const stops = route.stops.map((stop) => ({ ...stop, atKm: route.lengthKm - stop.atKm }));
        expect(cansOf({ ...route, stops })).toBe(cansOf(route));
      }),
      runs,
    );
  });

  it('the same input gives the same plan', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(plain(), (route) => {
        const once = () => solveCarry(questionOf(route), { solver, seconds: 60, clock: () => 0 });
        expect(once()).toEqual(once());
      }),
      { ...runs, numRuns: 50 },
    );
  });
});
