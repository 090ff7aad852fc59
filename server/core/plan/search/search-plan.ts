import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Leg } from '../legs/leg.ts';
import { cansAboard } from '../model/cans-aboard.ts';
import type { LegSearches } from '../model/leg-searches.ts';
import type { Cans } from '../question/can-limits.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { emptyRelieves } from '../question/mass-room.ts';
import { byCommodity } from '../side/other-of.ts';
import { type Cost, compareRanks, sumOf, withCansToGet } from './cost.ts';
import { failingPlaces, failureTable } from './failure-table.ts';
import { type JointPlan, jointSearch } from './joint-search.ts';
import { provenAims } from './proven-aims.ts';
import type { SearchFacts } from './search-facts.ts';
import { hasKnots, sideTable } from './side-table.ts';
import { type ToGo, toGoOf } from './to-go.ts';

/** Ways that are tried for the best plan where it is not told how many (ours). */
const MOST_TRIES = 3_000_000;
/** So many ways are tried in a moment where it is not told how many (ours). */
const MOMENT_TRIES = 20_000;
/** So many are tried for any good plan with each pair of numbers of cans, and with all of them, where it is not told (ours). */
const HASTY_TRIES = { ofPair: 600_000, ofAll: 3_000_000 };
/** What is still to come weighs so many times then (ours). */
const HASTE = 2;

/** A plan that was searched for. */
export interface FoundPlan {
  readonly status: 'found';
  readonly legs: Readonly<Record<Commodity, readonly Leg[]>>;
  readonly cans: Cans;
  /** Metres of further detour that its tightest leg bears, the greatest of plans alike; null where it was not looked for. */
  readonly leastMarginM: number | null;
  /** Whether there is none better of those that were searched; else it is a good one that was found soon. */
  readonly proven: boolean;
  /** So many of the aims that add up, the first ones, no plan can reach better, even one over supplies that were left out. */
  readonly provenAims: number;
}

/** Legs of the best plan; 'not searched' where the search does not tell, and the solver has to. */
export type Searched = FoundPlan | { readonly status: 'none' } | { readonly status: 'not searched' };

/** Numbers of cans with what a plan with at most so many costs at the least. */
interface Promise {
  readonly cans: Cans;
  readonly toGo: Readonly<Record<Commodity, ToGo>>;
  readonly rank: readonly number[];
}

/** What numbers of cans cost before any aim; more cans of either commodity cost no less. */
export type CansCost = (cans: Cans) => number;

const FREE: CansCost = () => 0;

/** What is asked of a search beyond the aims that add up. */
export interface SearchAsk {
  readonly cansCost?: CansCost;
  /** Of plans alike the one whose least margin is greatest. */
  readonly greatestMargin?: boolean;
  /** More ways than this are not tried for the best plan: then any good one is looked for. */
  readonly mostTries?: number;
  /** Told a good plan where the best takes longer than a moment. */
  readonly onSoFar?: ((plan: FoundPlan) => void) | undefined;
  /** A search that is done with so many ways takes no longer than a moment. */
  readonly momentTries?: number;
  /** More ways than these are not tried for any good plan. */
  readonly hastyTries?: typeof HASTY_TRIES;
}

/**
 * The best plan of a question by its aims, exact, without the solver: for each pair of numbers of cans, the most
 * promising first, the best pair of chains with at most so many. Only where every leg is of one hop.
 */
export function searchPlan(question: CarryQuestion, searches: LegSearches, ask: SearchAsk = {}): Searched {
  const { sides } = question;
  const { cansCost = FREE, greatestMargin = false, onSoFar } = ask;
  const { mostTries = MOST_TRIES, momentTries = MOMENT_TRIES, hastyTries = HASTY_TRIES } = ask;
  if (hasKnots(sides.fuel, sides.water) || hasKnots(sides.water, sides.fuel)) return NOT_SEARCHED;
  const fuel = sideTable(question, 'fuel', searches.fuel.legs);
  const water = sideTable(question, 'water', searches.water.legs);
  if (fuel === null || water === null) return NOT_SEARCHED;
  const tables = { fuel, water };
  const places = failingPlaces(question);
  const failures =
    places === null ? null : byCommodity((commodity) => failureTable(question, tables[commodity], places));
  const facts = { tables, failures, limits: question.room?.limits ?? [] };
  const ranking = { cansCost, owned: question.owned, greatestMargin };
  const found = ({ plan, cans }: RankedPlan, proven: boolean): FoundPlan => ({
    status: 'found',
    legs: byCommodity((commodity) => plan.legs[commodity].map(({ leg }) => leg)),
    cans,
    leastMarginM: greatestMargin ? plan.leastMarginM : null,
    proven,
    provenAims: provenAims(facts, question.owned, { cost: plan.cost, cans }),
  });
  const tell = onSoFar && ((soFar: RankedPlan) => onSoFar(found(soFar, false)));
  const { best, proven } = bestOf(facts, { ranking, mostTries, momentTries, hastyTries, tell });
  if (best === null) return proven ? { status: 'none' } : NOT_SEARCHED;
  return found(best, proven);
}

const NOT_SEARCHED = { status: 'not searched' } as const;

/** A plan with its place among others by the aims. */
interface RankedPlan {
  readonly plan: JointPlan;
  /** That are aboard: where an empty one relieves an axle, perhaps more than are ever full. */
  readonly cans: Cans;
  readonly rank: readonly number[];
}

/** What plans are ranked by, how much is looked at, and who is told a good one meanwhile. */
interface Work {
  readonly ranking: Ranking;
  readonly mostTries: number;
  readonly momentTries: number;
  readonly hastyTries: typeof HASTY_TRIES;
  readonly tell?: ((soFar: RankedPlan) => void) | undefined;
}

/** The best plan that was found, and whether it is the best of all, or there is none. */
interface Best {
  readonly best: RankedPlan | null;
  readonly proven: boolean;
}

function bestOf(facts: SearchFacts, work: Work): Best {
  const { ranking, mostTries, momentTries, tell } = work;
  const promises = promisesOf(facts, ranking);
  if (tell !== undefined && mostTries > momentTries) {
    const atOnce = bestOfPairs(facts, { ranking, effort: { left: momentTries } }, promises);
    if (atOnce.proven) return atOnce;
    const soFar = atOnce.best ?? anyGood(facts, work, promises);
    if (soFar !== null) tell(soFar);
  }
  const { best, proven } = bestOfPairs(facts, { ranking, effort: { left: mostTries } }, promises);
  if (best !== null || proven) return { best, proven };
  return { best: anyGood(facts, work, promises), proven };
}

/** Pair by pair. */
function bestOfPairs(
  facts: SearchFacts,
  { ranking, effort }: { readonly ranking: Ranking; readonly effort: { left: number } },
  promises: readonly Promise[],
): Best {
  const { greatestMargin } = ranking;
  let best: RankedPlan | null = null;
  for (const { cans, toGo, rank } of promises) {
    if (best !== null && compareRanks(best.rank, rank) <= 0) break;
    const known: RankedPlan | null = best;
    const isUseless = (least: Cost, mostMarginM: number) =>
      known !== null &&
      compareRanks(known.rank, rankOf(ranking, { cost: least, leastMarginM: mostMarginM }, cans)) <= 0;
    const onlyFull = areOnlyFull(facts, ranking);
    const plan = jointSearch(facts, { cans, toGo, effort, greatestMargin, isUseless, onlyFull });
    if (plan === 'given up') return { best, proven: false };
    if (plan !== null) best = betterPlan(best, rankedPlan(facts, plan, cans, ranking));
    // The first failed: before all others are tried it is asked whether any of them may be of use.
    else if (rank === promises[0]?.rank && !mayBeDone(facts, promises, effort)) break;
  }
  return { best, proven: true };
}

/**
 * Whether all numbers of cans up to those of a pair are searched at once, as many aboard as are ever full: those below the
 * cans that are owned need no search of their own then. Not where an empty can relieves an axle, nor where each has its cost.
 */
const areOnlyFull = ({ limits }: SearchFacts, { cansCost }: Ranking): boolean =>
  cansCost === FREE && !COMMODITIES.some((commodity) => emptyRelieves(limits, commodity));

/** A plan that was found soon, of the pairs that promise most; null where there is none so soon. */
function anyGood(
  facts: SearchFacts,
  { ranking, hastyTries }: Work,
  promises: readonly Promise[],
): RankedPlan | null {
  let leftOfAll = hastyTries.ofAll;
  for (const { cans, toGo } of promises) {
    const tries = Math.min(hastyTries.ofPair, leftOfAll);
    const effort = { left: tries };
    const onlyFull = areOnlyFull(facts, ranking);
    const within = { cans, toGo, effort, greatestMargin: false, isUseless: NEVER, haste: HASTE, onlyFull };
    const plan = jointSearch(facts, within);
    if (plan !== null && plan !== 'given up') return rankedPlan(facts, plan, cans, ranking);
    leftOfAll -= tries - effort.left;
    if (leftOfAll <= 0) break;
  }
  return null;
}

/** Where every plan is of use. */
const NEVER = () => false;

const betterPlan = (best: RankedPlan | null, other: RankedPlan): RankedPlan =>
  best === null || compareRanks(other.rank, best.rank) < 0 ? other : best;

/** With the cans of a pair, of which some may never be full. */
function rankedPlan({ limits }: SearchFacts, plan: JointPlan, within: Cans, ranking: Ranking): RankedPlan {
  const legs = byCommodity((commodity) => plan.legs[commodity].map(({ leg }) => leg));
  const cans = cansAboard(limits, legs, within);
  return { plan, cans, rank: rankOf(ranking, plan, cans) };
}

/** Whether there is any plan with the most cans, masses left out: with fewer there is none either where this is not so. */
function mayBeDone(facts: SearchFacts, promises: readonly Promise[], effort: { left: number }): boolean {
  const most = promises.reduce((a, b) =>
    b.cans.fuel >= a.cans.fuel && b.cans.water >= a.cans.water ? b : a,
  );
  return (
    jointSearch({ ...facts, limits: [] }, { ...most, effort, greatestMargin: false, isUseless: NEVER }) !==
    null
  );
}

/** All pairs of numbers of cans that make a difference, the most promising first. */
function promisesOf(facts: SearchFacts, ranking: Ranking): Promise[] {
  const { tables, failures } = facts;
  const counts = byCommodity((commodity) =>
    countsOf(facts, commodity, ranking).map((count) => ({
      count,
      toGo: toGoOf(tables[commodity], count, failures?.[commodity] ?? null),
    })),
  );
  const promises: Promise[] = [];
  for (const fuel of counts.fuel) {
    for (const water of counts.water) {
      if (fuel.toGo.start === null || water.toGo.start === null) continue;
      const cans = { fuel: fuel.count, water: water.count };
      const least = sumOf(fuel.toGo.start, water.toGo.start);
      promises.push({
        cans,
        toGo: { fuel: fuel.toGo, water: water.toGo },
        rank: rankOf(ranking, { cost: least, leastMarginM: Number.MAX_VALUE }, cans),
      });
    }
  }
  return promises.sort((a, b) => compareRanks(a.rank, b.rank));
}

/** Numbers of cans of a commodity that make a difference, in order. */
function countsOf(facts: SearchFacts, commodity: Commodity, ranking: Ranking): number[] {
  const { tables, limits } = facts;
  const { legs, side } = tables[commodity];
  const aboard = emptyRelieves(limits, commodity)
    ? Array.from({ length: side.mostCans }, (_, index) => index + 1)
    : [];
  const counts = [...new Set([0, ...legs.map(({ hop }) => hop.cans), ...aboard])].sort((a, b) => a - b);
  const haveWeight = limits.some(({ canKg }) => canKg[commodity].empty !== 0);
  if (haveWeight && !areOnlyFull(facts, ranking)) return counts;
  // Owned cans that need not be aboard cost nothing: with all of them there is every plan that there is with fewer.
  const owned = ranking.cansCost === FREE ? ranking.owned[commodity] : 0;
  const free = Math.max(...counts.filter((count) => count <= owned));
  return counts.filter((count) => count >= free);
}

/** What plans are ranked by beside their cost. */
interface Ranking {
  readonly cansCost: CansCost;
  readonly owned: Cans;
  readonly greatestMargin: boolean;
}

/**
 * The aims in their order, and fewer legs before more margin: nobody halts for a litre to spare. Last of all the fewest cans
 * aboard.
 */
function rankOf(
  { cansCost, owned, greatestMargin }: Ranking,
  { cost, leastMarginM }: Pick<JointPlan, 'cost' | 'leastMarginM'>,
  cans: Cans,
): readonly number[] {
  return [
    cansCost(cans),
    ...withCansToGet(cost, cans, owned),
    greatestMargin ? -leastMarginM : 0,
    cans.fuel + cans.water,
  ];
}
