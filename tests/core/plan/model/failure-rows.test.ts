import { beforeAll, describe, expect, it } from 'vitest';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { solveCarry } from '../../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { bareRoute, bareStop, questionOf, type SmallRoute } from '../by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Cans of the plan against one failure, of both commodities; null where there is none. */
function cansAgainstOne(route: SmallRoute, spendReserve: boolean, onlyStop?: number): number | null {
  const rule = onlyStop === undefined ? { spendReserve } : { spendReserve, onlyStop };
  const question = { ...questionOf(route), oneFailure: rule };
  const solved = solveCarry(question, { solver, seconds: 60, clock: () => 0 });
  return solved.status === 'found' ? solved.choice.cans.fuel + solved.choice.cans.water : null;
}

describe('a stop that fails in the model', () => {
  it('needs no can where it gives little and the way back is borne', () => {
    // 20 of 40 l at the start, 10 more at the pump, 250 km.
    const route = (atKm: number) =>
      bareRoute({
        lengthKm: 250,
        tankL: { fuel: 40, water: 40 },
        startL: { fuel: 20, water: 40 },
        mostCans: { fuel: 1, water: 0 },
        stops: [bareStop(atKm, { mostL: { fuel: 10 } })],
      });
    // Back from km 100: 20 l.
    expect(cansAgainstOne(route(100), false)).toBe(0);
    // Back from km 110 22 l, on to the end 25: a can of 5 l.
    expect(cansAgainstOne(route(110), false)).toBe(1);
  });

  it('is the only one where that is asked', { tags: 'slow' }, () => {
    // Of two pumps that give little the way back from the second is not borne: 20 l at the start and 5 at the first.
    const route = bareRoute({
      lengthKm: 300,
      tankL: { fuel: 40, water: 40 },
      startL: { fuel: 20, water: 40 },
      mostCans: { fuel: 3, water: 0 },
      stops: [bareStop(50, { mostL: { fuel: 5 } }), bareStop(190, { mostL: { fuel: 10 } })],
    });
    const cans = [0, 1].map((stop) => cansAgainstOne(route, false, stop));
    expect(cans).toEqual([cans[0], cansAgainstOne(route, false)]);
    expect(cans[1]).toBeGreaterThan(cans[0] ?? Number.POSITIVE_INFINITY);
  });

  it('sends nobody back whom the water would not last, where the pump gives little', () => {
    // Without the pump at km 200 45 l of 40 are needed: back, which is 20 l of water. Enough water, or a can of either.
    const route = (waterL: number) =>
      bareRoute({
        lengthKm: 450,
        tankL: { fuel: 40, water: waterL },
        mostCans: { fuel: 2, water: 2 },
        stops: [
          bareStop(200, { mostL: { fuel: 10 } }),
          bareStop(300, { offers: 'water' }),
          bareStop(310, { offers: 'water' }),
        ],
      });
    expect(cansAgainstOne(route(20), false)).toBe(0);
    expect(cansAgainstOne(route(16), false)).toBe(1);
  });

  it('sends the vehicle back only where the water on that way does as well', () => {
    const route = (waterL: number) =>
      bareRoute({
        lengthKm: 700,
        tankL: { fuel: 80, water: waterL },
        reserveL: { fuel: 15, water: 0 },
        mostCans: { fuel: 3, water: 3 },
        stops: [bareStop(400), bareStop(550, { offers: 'water', detourKm: 60 })],
      });
    // Without the pump 70 l and 15 in reserve are too many. Where it fails, the reserve spent: on over the halt that may
    // be made for water 82 of 80 l, back 80. Water for 7 days is 35 l; 400 km and back are 8 days, 40 l.
    expect(cansAgainstOne(route(40), true)).toBe(0);
    expect(cansAgainstOne(route(35), true)).toBe(1);
  });
});
