import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { PlanAim } from '../../../../server/contract/plan.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import type { CarryQuestion } from '../../../../server/core/plan/question/carry-question.ts';
import { solvedByModel } from '../../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { bestByBruteForce, type Values } from '../by-hand/brute-force.ts';
import { solveCarry } from '../by-hand/contracted.ts';
import {
  bareRoute,
  bareStop,
  FUEL_L_PER_KM,
  questionOf,
  type SmallRoute,
  smallRoute,
  townRoute,
} from '../by-hand/small-routes.ts';

const AIMS: PlanAim['aim'][] = [
  'doubtful-km',
  'implied-km',
  'stated-km',
  'cans-to-get',
  'lost-h',
  'driving-km',
  'can-km',
];

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Begins from the dearest plan that there is. */
const fromTheDearest = (): MipSolver => {
  let calls = 0;
  return (mip, cost, options) => {
    calls += 1;
    return solver(mip, calls === 1 ? cost.map((each) => -each) : cost, options);
  };
};

function valuesOf(problem: CarryQuestion): Values | null {
  const solved = solveCarry(problem, { solver, seconds: 60, clock: () => 0 });
  if (solved.status === 'none') return null;
  if (solved.status !== 'found') throw new Error(solved.status);
  for (const aim of solved.choice.aims) if (!aim.proven) throw new Error(`${aim.aim} is not proven`);
  return AIMS.map((aim) => solved.choice.aims.find((one) => one.aim === aim)?.value ?? 0) as Values;
}

describe('the solver’s first plan', () => {
  it('is told where it took longer than a moment, whatever the clock stood at', () => {
    const question = questionOf(bareRoute({ stops: [bareStop(150), bareStop(300)] }));
    const toldBy = (tickS: number) => {
      let nowS = 100;
      let told = 0;
      const clock = () => {
        nowS += tickS;
        return nowS;
      };
      solvedByModel(question, { solver, seconds: 60, clock }, () => {
        told += 1;
      });
      return told;
    };
    expect([toldBy(0), toldBy(0.2)]).toEqual([0, 1]);
  });
});

describe('the carry plan', () => {
  it('has the values of the best of all choices of stops, on 2,000 small routes', { tags: 'slow' }, () => {
    let found = 0;
    fc.assert(
      fc.property(townRoute(5), (route) => {
        const best = bestByBruteForce(route);
        const values = valuesOf(questionOf(route));
        if (best === null || values === null) {
          expect(values).toBe(best);
          return;
        }
        found += 1;
        values.forEach((value, index) => {
          expect(Math.abs(value - best[index]!), `${AIMS[index]}: ${value}, not ${best[index]}`).toBeLessThan(
            1e-4,
          );
        });
      }),
      { numRuns: 2000, seed: 20_260_704 },
    );
    // Neither all nor none can be driven, or the comparison would say little.
    expect(found).toBeGreaterThan(200);
  });
});

/** Fewest cans of one commodity without detours: the least, over all chains, of the most that a leg needs. */
function fewestByDynamicProgramme(route: SmallRoute): number | null {
  const stops = route.stops.filter(({ offers }) => offers !== 'water').map(({ atKm }) => atKm);
  const places = [0, ...stops.sort((a, b) => a - b), route.lengthKm];
  const fewest = places.map((_, index) => (index === 0 ? 0 : Number.POSITIVE_INFINITY));
  for (let to = 1; to < places.length; to += 1) {
    for (let from = 0; from < to; from += 1) {
      const needL = (places[to]! - places[from]!) * FUEL_L_PER_KM * (1 + route.shareOfNeed.fuel);
      const tankL = from === 0 ? Math.min(route.startL.fuel, route.tankL.fuel) : route.tankL.fuel;
      const cans = Math.max(0, Math.ceil((needL + route.reserveL.fuel - tankL) / route.canL.fuel - 1e-9));
      if (cans > (from === 0 && !route.cansAtStart ? 0 : route.mostCans.fuel)) continue;
      fewest[to] = Math.min(fewest[to]!, Math.max(fewest[from]!, cans));
    }
  }
  const best = fewest.at(-1)!;
  return Number.isFinite(best) ? best : null;
}

describe('each aim', () => {
  it('is brought to its best, whatever plan it begins from', () => {
    // 150 km take 15 of 20 l: no can is needed, and three are allowed.
    const question = questionOf(bareRoute({ lengthKm: 150, mostCans: { fuel: 3, water: 0 } }));
    const solved = solveCarry(question, { solver: fromTheDearest(), seconds: 60, clock: () => 0 });
    expect(solved).toMatchObject({ status: 'found', choice: { cans: { fuel: 0, water: 0 } } });
  });
});

describe('one commodity without detours', () => {
  it('has the fewest cans of a dynamic programme', { tags: 'slow' }, () => {
    let found = 0;
    fc.assert(
      fc.property(smallRoute(12), (drawn) => {
        const route: SmallRoute = {
          ...drawn,
          // Water is no matter here, and evidence is all alike.
          tankL: { ...drawn.tankL, water: 1000 },
          startL: { ...drawn.startL, water: 1000 },
          stops: drawn.stops.map((stop) => ({ ...stop, offers: 'fuel', detourKm: 0, evidence: 'confirmed' })),
        };
        const fewest = fewestByDynamicProgramme(route);
        if (fewest !== null && fewest > 0) found += 1;
        expect(valuesOf(questionOf(route))?.[3] ?? null).toBe(fewest);
      }),
      { numRuns: 300, seed: 20_260_705 },
    );
    expect(found).toBeGreaterThan(30);
  });
});
