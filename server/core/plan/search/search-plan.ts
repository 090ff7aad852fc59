import type { Commodity } from '../../../contract/common.ts';
import type { Leg } from '../legs/leg.ts';
import type { LegSearches } from '../model/leg-searches.ts';
import type { Cans } from '../question/can-limits.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { byCommodity } from '../side/other-of.ts';
import { type Cost, compareCosts, sumOf, WEAK_PARTS } from './cost.ts';
import { failingPlaces, failureTable } from './failure-table.ts';
import { type JointPlan, jointSearch, type SearchFacts } from './joint-search.ts';
import { hasKnots, sideTable } from './side-table.ts';
import { type ToGo, toGoOf } from './to-go.ts';

/** More ways than this are left to the solver (ours). */
const MOST_WAYS = 400_000;

/** Legs of the best plan; 'not searched' where the search does not tell, and the solver has to. */
export type Searched =
  | {
      readonly status: 'found';
      readonly legs: Readonly<Record<Commodity, readonly Leg[]>>;
      readonly cans: Cans;
    }
  | { readonly status: 'none' }
  | { readonly status: 'not searched' };

/** Numbers of cans with what a plan with at most so many costs at the least. */
interface Promise {
  readonly cans: Cans;
  readonly toGo: Readonly<Record<Commodity, ToGo>>;
  readonly rank: readonly number[];
}

/** What numbers of cans cost before any aim; more cans of either commodity cost no less. */
export type CansCost = (cans: Cans) => number;

const FREE: CansCost = () => 0;

/**
 * The best plan of a question by its aims, exact, without the solver: for each pair of numbers of cans, the most
 * promising first, the best pair of chains with at most so many. Only where every leg is of one hop.
 */
export function searchPlan(question: CarryQuestion, searches: LegSearches, cansCost = FREE): Searched {
  const { sides } = question;
  if (hasKnots(sides.fuel, sides.water) || hasKnots(sides.water, sides.fuel)) return NOT_SEARCHED;
  const fuel = sideTable(question, 'fuel', searches.fuel.legs);
  const water = sideTable(question, 'water', searches.water.legs);
  if (fuel === null || water === null) return NOT_SEARCHED;
  const tables = { fuel, water };
  const places = failingPlaces(question);
  const failures =
    places === null ? null : byCommodity((commodity) => failureTable(question, tables[commodity], places));
  return bestOf({ tables, failures, limits: question.room?.limits ?? [] }, cansCost);
}

const NOT_SEARCHED = { status: 'not searched' } as const;

/** A plan with its place among others by the aims. */
interface RankedPlan {
  readonly plan: JointPlan;
  /** That are aboard: where an empty one relieves an axle, perhaps more than are ever full. */
  readonly cans: Cans;
  readonly rank: readonly number[];
}

function bestOf(facts: SearchFacts, cansCost: CansCost): Searched {
  const rankOf = rankBy(cansCost);
  const promises = promisesOf(facts, rankOf);
  const effort = { left: MOST_WAYS };
  let best: RankedPlan | null = null;
  for (const { cans, toGo, rank } of promises) {
    if (best !== null && compareCosts(best.rank, rank) <= 0) break;
    const plan = jointSearch(facts, { cans, toGo, effort });
    if (plan === 'given up') return NOT_SEARCHED;
    if (plan !== null) best = betterPlan(best, { plan, cans, rank: rankOf(plan.cost, cans) });
    // The first failed: before all others are tried it is asked whether any of them may be of use.
    else if (rank === promises[0]?.rank && !mayBeDone(facts, promises, effort)) break;
  }
  return best === null ? { status: 'none' } : foundPlan(best);
}

const betterPlan = (best: RankedPlan | null, other: RankedPlan): RankedPlan =>
  best === null || compareCosts(other.rank, best.rank) < 0 ? other : best;

const foundPlan = ({ plan, cans }: RankedPlan): Searched => ({
  status: 'found',
  legs: byCommodity((commodity) => plan.legs[commodity].map(({ leg }) => leg)),
  cans,
});

/** Whether there is any plan with the most cans, masses left out: with fewer there is none either where this is not so. */
function mayBeDone(facts: SearchFacts, promises: readonly Promise[], effort: { left: number }): boolean {
  const most = promises.reduce((a, b) =>
    b.cans.fuel >= a.cans.fuel && b.cans.water >= a.cans.water ? b : a,
  );
  return jointSearch({ ...facts, limits: [] }, { ...most, effort }) !== null;
}

/** All pairs of numbers of cans that make a difference, the most promising first. */
function promisesOf({ tables, failures, limits }: SearchFacts, rankOf: ReturnType<typeof rankBy>): Promise[] {
  const counts = byCommodity((commodity) => {
    const all = tables[commodity].legs.map(({ hop }) => hop.cans);
    const relieving = limits.some(({ canKg }) => canKg[commodity].empty < 0);
    const aboard = relieving
      ? Array.from({ length: tables[commodity].side.mostCans }, (_, index) => index + 1)
      : [];
    return [...new Set([0, ...all, ...aboard])]
      .sort((a, b) => a - b)
      .map((count) => ({ count, toGo: toGoOf(tables[commodity], count, failures?.[commodity] ?? null) }));
  });
  const promises: Promise[] = [];
  for (const fuel of counts.fuel) {
    for (const water of counts.water) {
      if (fuel.toGo.start === null || water.toGo.start === null) continue;
      const cans = { fuel: fuel.count, water: water.count };
      const least = sumOf(fuel.toGo.start, water.toGo.start);
      promises.push({ cans, toGo: { fuel: fuel.toGo, water: water.toGo }, rank: rankOf(least, cans) });
    }
  }
  return promises.sort((a, b) => compareCosts(a.rank, b.rank));
}

/** The aims in their order: cans come behind what hangs on weak evidence. */
const rankBy =
  (cansCost: CansCost) =>
  (cost: Cost, cans: Cans): readonly number[] => [
    cansCost(cans),
    ...cost.slice(0, WEAK_PARTS),
    cans.fuel + cans.water,
    ...cost.slice(WEAK_PARTS),
  ];
