import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Aim } from '../../../../server/core/plan/model/aims.ts';
import type { Solution } from '../../../../server/core/plan/model/choice.ts';
import { legSearches } from '../../../../server/core/plan/model/leg-searches.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import type { CarryQuestion, FailureRule } from '../../../../server/core/plan/question/carry-question.ts';
import type { MassRoom } from '../../../../server/core/plan/question/mass-room.ts';
import { searchPlan } from '../../../../server/core/plan/search/search-plan.ts';
import { solveCarry, solvedByModel } from '../../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { questionOf, type SmallRoute, townRoute, waitingRoute } from '../small-routes.ts';

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
  routes: fc.Arbitrary<SmallRoute>,
  rooms: fc.Arbitrary<MassRoom | null>,
  rules: fc.Arbitrary<FailureRule | null>,
): fc.Arbitrary<CarryQuestion> =>
  fc.tuple(routes, rooms, rules).map(([route, ofRoom, oneFailure]) => ({
    ...questionOf(route),
    room: ofRoom,
    oneFailure,
  }));

const valuesOf = (solution: Solution, isAim: (aim: Aim) => boolean) =>
  solution.status === 'found'
    ? solution.choice.aims.filter(({ aim }) => isAim(aim)).map(({ aim, value }) => [aim, value] as const)
    : solution;

function expectSame(asked: CarryQuestion, isAim: (aim: Aim) => boolean = () => true): void {
  const options = { solver, seconds: 60, clock: () => 0 };
  const searched = searchPlan(asked, legSearches(asked));
  expect(searched.status).not.toBe('not searched');
  const [found, modelled] = [solveCarry(asked, options), solvedByModel(asked, options)].map((solution) =>
    valuesOf(solution, isAim),
  );
  if (!Array.isArray(modelled)) {
    expect(found).toEqual(modelled);
    return;
  }
  // To the solver's own tolerance: a millimetre.
  expect(found).toEqual(
    modelled.map(([aim, value]) => [aim, expect.closeTo(value, aim === 'cans-to-get' ? 9 : 2)]),
  );
}

const runs = { numRuns: 1000, seed: 20_261_130 };
const none = fc.constant(null);

describe('a plan that is searched for', () => {
  it('is as good by every aim as the solver’s', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(question(townRoute(6), none, none), (asked) => expectSame(asked)),
      { ...runs, numRuns: 300 },
    );
  });

  it('is as good where masses are permitted', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(question(waitingRoute(7), room, none), (asked) => expectSame(asked)),
      { ...runs, numRuns: 400 },
    );
  });

  it('is as good in towns where masses are permitted, but for what is left out of the tanks of plans alike', {
    tags: 'slow',
  }, () => {
    const asked = question(townRoute(6), room, fc.option(rule));
    fc.assert(
      fc.property(asked, (one) => expectSame(one, (aim) => aim !== 'short-fill-l')),
      { ...runs, numRuns: 400 },
    );
  });

  it('is as good where any one stop may fail', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(question(townRoute(6), none, rule), (asked) => expectSame(asked)),
      { ...runs, numRuns: 400 },
    );
  });

  it('is as good where masses are permitted and any one stop may fail', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(question(waitingRoute(7), room, rule), (asked) => expectSame(asked)),
      { ...runs, numRuns: 400 },
    );
  });
});
