import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { brokenLegs, drive } from '../../../../server/core/plan/drive/drive.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { solveCarry } from '../../../../server/core/plan/solve/solve.ts';
import { COMMODITIES } from '../../../../server/core/quantity/commodities.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { questionOf, type SmallRoute, smallRoute } from '../by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const choiceOf = (route: SmallRoute) => {
  const problem = questionOf(route);
  const solved = solveCarry(problem, { solver, seconds: 60, clock: () => 0 });
  return solved.status === 'found' ? { problem, choice: solved.choice } : null;
};

/** 900 km, 10 l/100 km, a tank of 45 l and cans of 10 l; the one pump at km 300. */
const WORKED: SmallRoute = {
  lengthKm: 900,
  stops: [{ atKm: 300, detourKm: 5, offers: 'fuel', evidence: 'stated' }],
  tankL: { fuel: 45, water: 45 },
  startL: { fuel: 45, water: 45 },
  canL: { fuel: 10, water: 10 },
  reserveL: { fuel: 5, water: 0 },
  shareOfNeed: { fuel: 0, water: 0 },
  mostCans: { fuel: 5, water: 5 },
  cansAtStart: true,
  waterLPerDay: 2,
};

describe('driving a plan', () => {
  it('carries from the pump what the second leg needs, and pours each can when there is room', () => {
    const { problem, choice } = choiceOf(WORKED)!;
    expect(choice.cans).toEqual({ fuel: 3, water: 0 });
    const driven = drive(problem.sides, choice);
    // To the pump: 305 km, 30.5 l. On: 605 km, 60.5 l and 5 l in reserve of 45 + 2 cans = 65: one can too few.
    expect(driven.fuel.map(({ cans }) => cans)).toEqual([0, 3]);
    expect(driven.fuel[0]!.figures.arriveL).toBeCloseTo(14.5, 9);
    expect(driven.fuel[1]!.figures.arriveL).toBeCloseTo(75 - 60.5, 9);
    // 5 km back to the route, then 10 l are gone at km 395, 495 and 595.
    expect(driven.fuel[1]!.poursM.map((atM) => Math.round(atM))).toEqual([395_000, 495_000, 595_000]);
  });

  it('leaves the tanks short where a leg begins, not where it is filled up on its way', () => {
    const { sides } = questionOf({
      ...WORKED,
      stops: [{ atKm: 300, detourKm: 0, offers: 'fuel', evidence: 'stated', mostL: { fuel: 20 } }],
    });
    const hop = (from: number) => ({ from, to: from + 1, tankL: 45, cans: 0, filledL: 20, spareM: 0 });
    const leg = { from: 0, to: 2, hops: [hop(0), hop(1)] as const, spareL: 0, canM: 0, shortL: 4 };
    const legs = { fuel: [leg], water: [] };
    const driven = drive(sides, { legs });
    // 45 l less 4; 30 are gone at the pump, which gives 20.
    expect(driven.fuel.map(({ shortL, tankL }) => [shortL, tankL])).toEqual([
      [4, 41],
      [0, 31],
    ]);
  });

  it('charges the other commodity for a halt, in its place', () => {
    const { problem, choice } = choiceOf({
      ...WORKED,
      waterLPerDay: 5,
      tankL: { fuel: 45, water: 60 },
      startL: { fuel: 45, water: 60 },
    })!;
    const [leg] = drive(problem.sides, choice).water;
    // 910 km at 100 km a day are 9.1 days of 5 l.
    expect(leg!.figures.needL).toBe(45.5);
    const there = leg!.levels.filter(({ atM }) => atM === 300_000);
    expect(there).toHaveLength(2);
    // 10 km are a tenth of a day.
    expect(there[0]!.tankL - there[1]!.tankL).toBeCloseTo(0.5, 9);
  });

  it('keeps every reserve, loses no litre and overfills no tank, on any small route', {
    tags: 'slow',
  }, () => {
    fc.assert(
      fc.property(smallRoute(), (route) => {
        const found = choiceOf(route);
        if (found === null) return;
        const driven = drive(found.problem.sides, found.choice);
        expect(brokenLegs(driven)).toEqual([]);
        for (const commodity of COMMODITIES) {
          for (const { levels, figures, cans } of driven[commodity]) {
            const sums = levels.map(
              ({ tankL, cansL }) => tankL + cansL.reduce((sum, litres) => sum + litres, 0),
            );
            expect(sums[0]).toBeCloseTo(figures.departL, 6);
            expect(sums.at(-1)).toBeCloseTo(figures.arriveL, 6);
            sums.slice(1).forEach((sum, index) => {
              expect(sum).toBeLessThanOrEqual(sums[index]! + 1e-6);
            });
            for (const { tankL, cansL } of levels) {
              expect(tankL).toBeLessThanOrEqual(route.tankL[commodity] + 1e-6);
              expect(tankL).toBeGreaterThanOrEqual(-1e-6);
              expect(cansL).toHaveLength(cans);
            }
          }
        }
      }),
      { numRuns: 200, seed: 20_260_706 },
    );
  });
});
