import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Solution } from '../../../../server/core/plan/model/choice.ts';
import { legSearches } from '../../../../server/core/plan/model/leg-searches.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import type { CarryQuestion, FailureRule } from '../../../../server/core/plan/question/carry-question.ts';
import type { MassRoom } from '../../../../server/core/plan/question/mass-room.ts';
import { searchPlan } from '../../../../server/core/plan/search/search-plan.ts';
import { solveCarry, solvedByModel } from '../../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { bestByBruteForce } from '../brute-force.ts';
import { questionOf, smallRoute } from '../small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** One permitted mass, from one that forbids nearly every can to one that forbids none. */
const room: fc.Arbitrary<MassRoom> = fc
  // Empty cans behind the axles relieve the one in front.
  .record({ leftKg: fc.integer({ min: -20, max: 60 }), empty: fc.integer({ min: -3, max: 3 }) })
  .map(({ leftKg, empty }) => ({
    limits: [
      {
        name: 'total',
        leftKg,
        canKg: { fuel: { empty, filling: 4 }, water: { empty, filling: 5 } },
        perLitreKg: { fuel: 0.8, water: 1 },
      },
    ],
  }));

const rule: fc.Arbitrary<FailureRule> = fc.record({ spendReserve: fc.boolean() });

/** Questions whose every supply gives all that is wanted. */
const question = (
  rooms: fc.Arbitrary<MassRoom | null>,
  rules: fc.Arbitrary<FailureRule | null>,
): fc.Arbitrary<CarryQuestion> =>
  fc.tuple(smallRoute(7), rooms, rules, waits).map(([route, ofRoom, oneFailure, ofStops]) => ({
    ...questionOf({
      ...route,
      stops: route.stops.map((stop, index) => ({ ...stop, ...ofStops[index] })),
    }),
    room: ofRoom,
    oneFailure,
  }));

/** Waiting and filling at some stops. */
const waits = fc.array(
  fc.record({
    waitDays: fc.constantFrom(0, 0, 0, 0.25, 0.5, 1),
    daysPerLitre: fc.constantFrom(0, 0, 0, 0.005),
  }),
  { minLength: 7, maxLength: 7 },
);

const valuesOf = (solution: Solution) =>
  solution.status === 'found'
    ? solution.choice.aims.map(({ aim, value }) => [aim, value] as const)
    : solution;

function expectSame(asked: CarryQuestion): void {
  const options = { solver, seconds: 60, clock: () => 0 };
  const searched = searchPlan(asked, legSearches(asked));
  expect(searched.status).not.toBe('not searched');
  const [found, modelled] = [solveCarry(asked, options), solvedByModel(asked, options)].map(valuesOf);
  if (!Array.isArray(modelled)) {
    expect(found).toEqual(modelled);
    return;
  }
  // To the solver's own tolerance: a millimetre.
  expect(found).toEqual(modelled.map(([aim, value]) => [aim, expect.closeTo(value, aim === 'cans' ? 9 : 2)]));
}

const runs = { numRuns: 1000, seed: 20_261_130 };
const none = fc.constant(null);

describe('a plan that is searched for', () => {
  it('is as good by every aim as the best of all by brute force', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(smallRoute(6), (route) => {
        const asked = questionOf(route);
        const solution = solveCarry(asked, { solver, seconds: 60, clock: () => 0 });
        const best = bestByBruteForce(route);
        if (best === null) {
          expect(solution.status).toBe('none');
          return;
        }
        if (solution.status !== 'found') throw new Error('there is a plan');
        const value = (name: string) => solution.choice.aims.find(({ aim }) => aim === name)?.value ?? 0;
        const metres = ['doubtful-m', 'implied-m', 'stated-m', 'driving-m', 'can-m'].map(value);
        expect(metres).toEqual(
          [best[0], best[1], best[2], best[4], best[5]].map((km) => expect.closeTo(km * 1000, 3)),
        );
        expect(value('cans')).toBe(best[3]);
      }),
      runs,
    );
  });

  it('is as good by every aim as the solver’s', { tags: 'slow' }, () => {
    fc.assert(fc.property(question(none, none), expectSame), { ...runs, numRuns: 300 });
  });

  it('is as good where masses are permitted', { tags: 'slow' }, () => {
    fc.assert(fc.property(question(room, none), expectSame), { ...runs, numRuns: 400 });
  });

  it('is as good where any one stop may fail', { tags: 'slow' }, () => {
    fc.assert(fc.property(question(none, rule), expectSame), { ...runs, numRuns: 400 });
  });

  it('is as good where masses are permitted and any one stop may fail', { tags: 'slow' }, () => {
    fc.assert(fc.property(question(room, rule), expectSame), { ...runs, numRuns: 400 });
  });
});
