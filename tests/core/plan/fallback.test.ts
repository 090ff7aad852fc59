import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { PlanAim } from '../../../server/contract/plan.ts';
import { brokenLegs, drive } from '../../../server/core/plan/drive/drive.ts';
import type { MipAnswer, MipSolver } from '../../../server/core/plan/model/mip.ts';
import type { CarryQuestion } from '../../../server/core/plan/question/carry-question.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { type ChoiceInKm, solvedByModel } from './by-hand/contracted.ts';
import { questionOf, smallRoute } from './by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const runs = { numRuns: 40, seed: 20_270_104 };
const asked = (by: MipSolver, clock = () => 0) => ({ solver: by, seconds: 5, clock });

function bestOf(problem: CarryQuestion): ChoiceInKm | null {
  const solved = solvedByModel(problem, asked(solver));
  return solved.status === 'found' ? solved.choice : null;
}

/** Any solution, whatever it costs: what a solver has when it is stopped early. */
const anyOf: MipSolver = (mip, cost, options) => {
  const answer = solver(mip, new Float64Array(cost.length), { ...options, start: null });
  return answer.values === null ? answer : stopped(answer.values, cost, Number.NEGATIVE_INFINITY);
};

/** As of a solver that ran out of time with these values and knows that nothing is below `bound`. */
const stopped = (values: Float64Array, cost: Float64Array, bound: number): MipAnswer => ({
  status: 'out-of-time',
  values,
  objective: cost.reduce((sum, each, column) => sum + each * values[column]!, 0),
  bound,
});

const reachedIn = (aims: readonly PlanAim[], aim: PlanAim['aim']): number =>
  aims.find((one) => one.aim === aim)?.value ?? 0;

/** The plan holds when driven, and the first aim that is not its best says so, with a gap that reaches down to the best. */
function expectHonest(problem: CarryQuestion, choice: ChoiceInKm, best: ChoiceInKm): boolean {
  expect(brokenLegs(drive(problem.sides, choice))).toEqual([]);
  for (const { aim, value, proven, gap } of choice.aims) {
    const least = reachedIn(best.aims, aim);
    expect(proven ? gap : 0).toBe(0);
    if (!proven) expect(gap).toBeGreaterThan(0);
    expect(value - gap).toBeLessThanOrEqual(least + 1e-5);
    if (value <= least + 1e-5) continue;
    expect(proven, `${aim} of ${value} is called proven where ${least} can be had`).toBe(false);
    // Later aims are held against this one, so that their best is another.
    return true;
  }
  return false;
}

describe('a solver that runs out of time', () => {
  it('leaves a plan that holds, from its very first answer, and tells the gap', { tags: 'slow' }, () => {
    let worse = 0;
    fc.assert(
      fc.property(smallRoute(), (route) => {
        const problem = questionOf(route);
        const best = bestOf(problem);
        let calls = 0;
        let start: Float64Array | null = null;
        const early: MipSolver = (mip, cost, options) => {
          calls += 1;
          const answer: MipAnswer =
            calls === 1 ? anyOf(mip, cost, options) : stopped(options.start!, cost, Number.NEGATIVE_INFINITY);
          start ??= answer.values;
          if (calls > 1) expect(options.start).toEqual(start);
          return answer;
        };
        const solved = solvedByModel(problem, asked(early));
        if (best === null || solved.status !== 'found') {
          expect(solved.status).toBe(best === null ? 'none' : 'found');
          return;
        }
        if (expectHonest(problem, solved.choice, best)) worse += 1;
        for (const { value, proven } of solved.choice.aims) expect(proven).toBe(value <= 1e-5);
      }),
      runs,
    );
    expect(worse).toBeGreaterThan(7);
  });

  it('tells by how much it might be better at the most, by what the solver knows', { tags: 'slow' }, () => {
    let told = 0;
    fc.assert(
      fc.property(smallRoute(), (route) => {
        const problem = questionOf(route);
        const best = bestOf(problem);
        const knowing: MipSolver = (mip, cost, options) => {
          if (options.start === null) return anyOf(mip, cost, options);
          const { bound } = solver(mip, cost, options);
          return stopped(options.start, cost, bound);
        };
        const solved = solvedByModel(problem, asked(knowing));
        if (best === null || solved.status !== 'found') return;
        const [first] = solved.choice.aims;
        // With nothing held before it the bound is the best there is.
        expect(first!.value - first!.gap).toBeCloseTo(reachedIn(best.aims, first!.aim), 4);
        if (first!.gap > 0) told += 1;
        expectHonest(problem, solved.choice, best);
      }),
      runs,
    );
    expect(told).toBeGreaterThan(2);
  });

  it('never makes a plan worse than what it started with', { tags: 'slow' }, () => {
    let refused = 0;
    fc.assert(
      fc.property(smallRoute(), (route) => {
        const problem = questionOf(route);
        const good = bestOf(problem);
        if (good === null) return;
        let first = true;
        const failing: MipSolver = (mip, cost, options) => {
          if (first) {
            first = false;
            return solver(mip, cost, options);
          }
          refused += 1;
          return anyOf(mip, cost, options);
        };
        const solved = solvedByModel(problem, asked(failing));
        if (solved.status !== 'found') throw new Error(solved.status);
        const start = startOf(problem);
        // An aim may get worse only for one before it that got better.
        for (const { aim, value } of solved.choice.aims) {
          const before = reachedIn(start.aims, aim);
          if (value < before - 1e-5) break;
          expect(value, aim).toBeLessThanOrEqual(before + 1e-5);
        }
        expect(brokenLegs(drive(problem.sides, solved.choice))).toEqual([]);
      }),
      runs,
    );
    expect(refused).toBeGreaterThan(25);
  });

  it('stops when the time is over, with what it has', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(smallRoute(), (route) => {
        const problem = questionOf(route);
        const best = bestOf(problem);
        let calls = 0;
        const counted: MipSolver = (mip, cost, options) => {
          calls += 1;
          return anyOf(mip, cost, options);
        };
        // Each look at the clock is ten seconds later.
        let seconds = 0;
        const clock = () => {
          seconds += 10;
          return seconds;
        };
        const solved = solvedByModel(problem, asked(counted, clock));
        if (solved.status !== 'found' || best === null) return;
        expect(calls).toBe(1);
        expectHonest(problem, solved.choice, best);
      }),
      { ...runs, numRuns: 30 },
    );
  });

  it('without any plan says that it was out of time, not that there is none', { tags: 'slow' }, () => {
    const empty: MipSolver = () => ({
      status: 'out-of-time',
      values: null,
      objective: Number.NaN,
      bound: Number.NaN,
    });
    fc.assert(
      fc.property(smallRoute(), (route) => {
        const problem = questionOf(route);
        if (bestOf(problem) === null) return;
        expect(solvedByModel(problem, asked(empty))).toEqual({ status: 'out-of-time' });
      }),
      { ...runs, numRuns: 30 },
    );
  });

  /** What the weighted sum alone comes to: the start of all aims. */
  function startOf(problem: CarryQuestion): ChoiceInKm {
    let first = true;
    const once: MipSolver = (mip, cost, options) => {
      if (!first) return stopped(options.start!, cost, Number.NEGATIVE_INFINITY);
      first = false;
      return solver(mip, cost, options);
    };
    const solved = solvedByModel(problem, asked(once));
    if (solved.status !== 'found') throw new Error(solved.status);
    return solved.choice;
  }
});
