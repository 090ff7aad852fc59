import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { legSearches } from '../../../../server/core/plan/model/leg-searches.ts';
import type { CarryQuestion } from '../../../../server/core/plan/question/carry-question.ts';
import type { MassRoom } from '../../../../server/core/plan/question/mass-room.ts';
import {
  type SearchAsk,
  type Searched,
  searchPlan,
} from '../../../../server/core/plan/search/search-plan.ts';
import { byCommodity } from '../../../../server/core/plan/side/other-of.ts';
import { aimsReached } from '../../../../server/core/plan/solve/aims-reached.ts';
import {
  bareRoute,
  bareStop,
  questionOf,
  type SmallRoute,
  townRoute,
  waitingRoute,
} from '../by-hand/small-routes.ts';

const runs = { numRuns: 300, seed: 20_261_130 };

const room: fc.Arbitrary<MassRoom> = fc.integer({ min: -20, max: 60 }).map((leftKg) => ({
  limits: [
    {
      name: 'total',
      leftKg,
      canKg: { fuel: { empty: 2, filling: 4 }, water: { empty: 2, filling: 5 } },
      perLitreKg: { fuel: 0.8, water: 1 },
    },
  ],
}));

const asked = (routes: fc.Arbitrary<SmallRoute>): fc.Arbitrary<CarryQuestion> =>
  fc
    .tuple(routes, fc.option(room), fc.option(fc.record({ spendReserve: fc.boolean() })))
    .map(([route, ofRoom, oneFailure]) => ({ ...questionOf(route), room: ofRoom, oneFailure }));

const searchOf = (question: CarryQuestion, mostTries?: number): Searched =>
  searchPlan(question, legSearches(question), {
    greatestMargin: true,
    ...(mostTries === undefined ? {} : { mostTries }),
  });

/** What a plan reaches of the aims that add up, in their order. */
function aimValues(question: CarryQuestion, found: Extract<Searched, { status: 'found' }>): number[] {
  const aims = aimsReached(question, legSearches(question), { ...found, complete: true });
  return AIMS.map((name) => aims.find(({ aim }) => aim === name)?.value ?? 0);
}

const AIMS = ['doubtful-m', 'implied-m', 'stated-m', 'cans-to-get', 'lost-h', 'driving-m', 'can-m'];

/** Below nothing where the first is the better, to a millimetre. */
const compared = (a: readonly number[], b: readonly number[]): number =>
  a.map((value, part) => value - (b[part] ?? 0)).find((more) => Math.abs(more) > 1e-3) ?? 0;

describe('a plan that was found soon', () => {
  it('is one where there is one, never better than the best, and says that it is not proven', {
    tags: 'slow',
  }, () => {
    let soonFound = 0;
    fc.assert(
      fc.property(asked(townRoute(7)), (question) => {
        const best = searchOf(question);
        const soon = searchOf(question, 0);
        expect(best.status).not.toBe('not searched');
        expect(soon.status === 'found').toBe(best.status === 'found');
        if (soon.status !== 'found' || best.status !== 'found') return;
        expect(soon.proven).toBe(false);
        expect(best.proven).toBe(true);
        expect(compared(aimValues(question, soon), aimValues(question, best))).toBeGreaterThanOrEqual(0);
        soonFound += 1;
      }),
      runs,
    );
    expect(soonFound).toBeGreaterThan(30);
  });
});

describe('a search whose tries are up', () => {
  const searchWith = (question: CarryQuestion, ask: SearchAsk) =>
    searchPlan(question, legSearches(question), { greatestMargin: true, ...ask });

  it('gives the best that it has come to, not one that was found in haste', () => {
    const empty = -2;
    const limits: MassRoom['limits'] = [
      {
        name: 'total',
        leftKg: -4,
        canKg: { fuel: { empty, filling: 4 }, water: { empty, filling: 5 } },
        perLitreKg: { fuel: 0.8, water: 1 },
      },
    ];
    const route = bareRoute({
      lengthKm: 520,
      stops: [
        bareStop(40, { offers: 'water', evidence: 'stated', detourKm: 25, waitDays: 1, daysPerLitre: 0.005 }),
        bareStop(90, { evidence: 'doubtful', detourKm: 25 }),
        bareStop(460, { offers: 'both', evidence: 'stated' }),
        bareStop(490, { offers: 'both', evidence: 'stated', detourKm: 25 }),
      ],
      tankL: { fuel: 40, water: 43 },
      startL: { fuel: 12, water: 19 },
      canL: { fuel: 8, water: 4 },
      reserveL: { fuel: 0, water: 4 },
      shareOfNeed: { fuel: 0, water: 0.1 },
      mostCans: { fuel: 3, water: 3 },
      owned: { fuel: 2, water: 1 },
      waterLPerDay: 6,
    });
    const question = { ...questionOf(route), room: { limits }, oneFailure: { spendReserve: true } };
    const [hasty, upSoon, best] = [0, 30, 1_000_000].map((mostTries) => searchWith(question, { mostTries }));
    if (hasty?.status !== 'found' || upSoon?.status !== 'found' || best?.status !== 'found')
      throw new Error('there is a plan');
    expect([upSoon.proven, best.proven]).toEqual([false, true]);
    expect(compared(aimValues(question, upSoon), aimValues(question, best))).toBe(0);
    expect(compared(aimValues(question, hasty), aimValues(question, best))).toBeGreaterThan(0);
  });

  it('tells of none, or of one that is not proven, where those in haste are up as well', () => {
    let without = 0;
    fc.assert(
      fc.property(asked(townRoute(4)), fc.integer({ min: 1, max: 30 }), (question, ofPair) => {
        const soon = searchWith(question, { mostTries: 0, hastyTries: { ofPair, ofAll: 2 * ofPair } });
        if (soon.status === 'found') expect(soon.proven).toBe(false);
        else without += 1;
      }),
      { ...runs, numRuns: 25 },
    );
    expect(without).toBeGreaterThan(0);
  });
});

describe('a plan that is told while the best is searched for', () => {
  it('is a good one, told before the best, which is the same as if nobody were told', {
    tags: 'slow',
  }, () => {
    let told = 0;
    fc.assert(
      fc.property(asked(townRoute(7)), (question) => {
        const plans: Extract<Searched, { status: 'found' }>[] = [];
        const best = searchPlan(question, legSearches(question), {
          greatestMargin: true,
          momentTries: 0,
          onSoFar: (plan) => plans.push(plan),
        });
        expect(best).toEqual(searchOf(question));
        expect(plans.length).toBe(best.status === 'found' ? 1 : 0);
        for (const plan of plans) {
          if (best.status !== 'found') continue;
          expect(plan.proven).toBe(false);
          expect(compared(aimValues(question, plan), aimValues(question, best))).toBeGreaterThanOrEqual(0);
          told += 1;
        }
      }),
      runs,
    );
    expect(told).toBeGreaterThan(30);
  });

  it('is told by none that takes no longer than a moment', () => {
    fc.assert(
      fc.property(asked(townRoute(4)), (question) => {
        let told = 0;
        const onSoFar = () => {
          told += 1;
        };
        searchPlan(question, legSearches(question), { greatestMargin: true, onSoFar });
        expect(told).toBe(0);
      }),
      { ...runs, numRuns: 50 },
    );
  });
});

describe('aims that are proven although supplies were left out', () => {
  it('are reached no better with all of them', { tags: 'slow' }, () => {
    let proven = 0;
    const cases = fc.tuple(asked(waitingRoute(7)), fc.constantFrom('fuel', 'water'), fc.nat());
    fc.assert(
      fc.property(cases, ([question, commodity, seed]) => {
        const fewer = withoutOne(question, commodity, seed);
        if (fewer === null) return;
        const few = searchOf(fewer);
        const all = searchOf(question);
        if (few.status !== 'found' || all.status !== 'found') return;
        const [withFew, withAll] = [aimValues(fewer, few), aimValues(question, all)];
        const count = few.provenAims;
        expect(compared(withFew.slice(0, count), withAll.slice(0, count))).toBe(0);
        if (count > 3) proven += 1;
      }),
      runs,
    );
    expect(proven).toBeGreaterThan(20);
  });
});

/** The question with a supply of a commodity left out; null where it has none. */
function withoutOne(
  question: CarryQuestion,
  commodity: 'fuel' | 'water',
  seed: number,
): CarryQuestion | null {
  const side = question.sides[commodity];
  const passings = side.edges.filter(({ kind }) => kind === 'passing');
  const gone = passings[seed % Math.max(1, passings.length)];
  if (gone === undefined) return null;
  const fewer = { ...side, edges: side.edges.filter((edge) => edge !== gone), counting: side.edges };
  return { ...question, sides: byCommodity((each) => (each === commodity ? fewer : question.sides[each])) };
}
