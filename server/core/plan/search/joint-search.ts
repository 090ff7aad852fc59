import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import type { Cans } from '../question/can-limits.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import { type Beside, Branch, type Choices, choicesFrom, choicesOf, type GoingOn, times } from './branch.ts';
import { type Cost, compareCosts, haltingCost, NO_COST, sumOf } from './cost.ts';
import { haltsWith, spareAfterHalts } from './halting.ts';
import { Heap } from './heap.ts';
import { KnownWays } from './known-ways.ts';
import { type Masses, type MassesSoFar, massesOf, withLegs } from './masses-so-far.ts';
import { NONE_OPEN, openComingTo, openGoingOn } from './open-places.ts';
import type { SearchFacts } from './search-facts.ts';
import { isLast, type SearchLeg } from './side-table.ts';
import type { ToGo } from './to-go.ts';
import { moreOf, mostMarginM, type StopHalts, together, type Way } from './way.ts';

/** With at most so many cans; `toGo` is of as many. */
export interface SearchWithin {
  readonly cans: Cans;
  readonly toGo: Readonly<Record<Commodity, ToGo>>;
  /** Of the cans only as many are aboard as legs ever have full; else all that there may be. */
  readonly onlyFull?: boolean;
  /** Whether of plans that cost as much the one whose least margin is greatest is sought. */
  readonly greatestMargin: boolean;
  /** Whether a plan that costs so much at the least, with such a least margin at the most, is of no use any more. */
  readonly isUseless: (least: Cost, mostMarginM: number) => boolean;
  /** One less with each way that is tried; the search is given up when none are left. */
  readonly effort: { left: number };
  /**
   * What is still to come weighs so many times: with more than once a plan is found sooner, which costs at most so many
   * times the least (Pohl, Artificial Intelligence 1, 1970).
   */
  readonly haste?: number;
}

/** Two chains of legs from start to end, as their last legs and what led to them. */
export interface JointPlan {
  readonly legs: Readonly<Record<Commodity, readonly SearchLeg[]>>;
  readonly cost: Cost;
  /**
   * What the tightest leg still bears before a reserve is touched: metres of further detour, in which fuel and water
   * compare.
   */
  readonly leastMarginM: number;
}

/**
 * The best pair of chains by cost, exact: a search that looks at what promises most first (A*; Hart, Nilsson and Raphael,
 * IEEE Trans. Syst. Sci. Cybern. 4, 1968). The promise is what each commodity costs by itself, so nothing better is
 * missed. Both go forward in route order, and where a leg ends the other bears the halt. Null where there is none of use;
 * 'given up' where that would take too long.
 */
export function jointSearch(facts: SearchFacts, within: SearchWithin): JointPlan | null | 'given up' {
  const search = new JointSearch(facts, within);
  return search.run();
}

class JointSearch {
  readonly #facts: SearchFacts;
  readonly #within: SearchWithin;
  readonly #haste: number;
  readonly #heap = new Heap<Branch>((a, b) => this.#inOrder(a, b));
  readonly #known: KnownWays;
  readonly #masses: Masses;
  /** The legs that may be chosen, by the edge that they begin at, once they were asked for. */
  readonly #choices: Readonly<Record<Commodity, Choices[]>> = { fuel: [], water: [] };

  constructor(facts: SearchFacts, within: SearchWithin) {
    this.#facts = facts;
    this.#within = within;
    const { cans, onlyFull = false, haste = 1, greatestMargin } = within;
    this.#haste = haste;
    this.#masses = massesOf(facts.limits, cans, onlyFull);
    this.#known = new KnownWays({ ...facts, greatestMargin });
  }

  run(): JointPlan | null | 'given up' {
    const { tables } = this.#facts;
    const { effort, isUseless } = this.#within;
    const start = { cost: NO_COST, marginM: Number.MAX_VALUE, masses: this.#masses.start, stopHalts: null };
    this.#branchBoth({ fuel: 0, water: 0 }, { ...start, open: NONE_OPEN, before: null, kept: {} });
    let best: Way | null = null;
    for (let branch = this.#heap.first; branch !== undefined; branch = this.#heap.first) {
      // Nothing that is looked at later costs less, or as little with more margin.
      if (isUseless(branch.order, branch.marginM) || !this.#mayBeBetter(branch, best)) break;
      if (effort.left <= 0) return 'given up';
      const way = this.#nextWay(branch);
      if (way === null) continue;
      if (!isEnd(tables, way)) this.#goOn(way);
      else if (best === null || cansOf(way) < cansOf(best)) best = way;
    }
    return best === null ? null : planOf(best);
  }

  /** The next way of the first branch, which goes on to the one after; null where it does not hold, or none is needed of it. */
  #nextWay(branch: Branch): Way | null {
    if (branch.on.before?.isPassed === true) {
      this.#heap.pop();
      return null;
    }
    const way = this.#wayOf(branch);
    if (branch.advance()) this.#heap.settleFirst();
    else this.#heap.pop();
    return way;
  }

  /** A branch is looked at in its turn from then on, where it has any way that holds. */
  #push(on: GoingOn, beside: Omit<Beside, 'massesWith'>): void {
    const branch = new Branch(on, { ...beside, massesWith: this.#massesWith });
    if (branch.advance()) this.#heap.push(branch);
  }

  readonly #massesWith = (leg: SearchLeg, { commodity, beside, on }: Branch): MassesSoFar | null =>
    withLegs(this.#masses, on.masses, twoLegs(commodity, leg, beside));

  /** Whether a branch may lead to a plan as good as one that was come to, with fewer cans. */
  #mayBeBetter({ order, marginM, cans }: Branch, best: Way | null): boolean {
    if (best === null) return true;
    return (
      cans < cansOf(best) &&
      compareCosts(order, best.cost) <= 0 &&
      (!this.#within.greatestMargin || marginM >= mostMarginM(best))
    );
  }

  /** Below nothing where a way is to be looked at before another. */
  #inOrder(a: Branch, b: Branch): number {
    const byCost = compareCosts(a.order, b.order);
    if (byCost !== 0) return byCost;
    const byMargin = this.#within.greatestMargin ? b.marginM - a.marginM : 0;
    return byMargin || a.cans - b.cans || b.reachedM - a.reachedM;
  }

  #choicesFrom(commodity: Commodity, from: number): Choices {
    const known = this.#choices[commodity][from];
    if (known !== undefined) return known;
    const { cans, toGo } = this.#within;
    const within = { cans: cans[commodity], toGo: toGo[commodity], haste: this.#haste };
    const choices = choicesFrom(this.#facts.tables[commodity], from, within);
    this.#choices[commodity][from] = choices;
    return choices;
  }

  /** Every way that goes on with a leg of each commodity. */
  #branchBoth(from: Readonly<Record<Commodity, number>>, on: GoingOn): void {
    const choices = this.#choicesFrom('water', from.water);
    if (choices.legs.length === 0) return;
    for (const { leg, promise } of this.#choicesFrom('fuel', from.fuel).legs) {
      const cost = sumOf(sumOf(on.cost, promise), this.#sharedLater(leg, on.stopHalts));
      this.#push(on, { commodity: 'water', beside: leg, cost, choices });
    }
  }

  /** Every way that goes on with a leg of one commodity while the other is still on its own. */
  #branchOne(commodity: Commodity, legs: Way['legs'], on: GoingOn): void {
    const { toGo } = this.#within;
    const beside = legs[otherOf(commodity)];
    const rest = toGo[otherOf(commodity)].after(beside);
    if (rest === null) return;
    const all = this.#choicesFrom(commodity, legs[commodity].hop.to);
    const cost = sumOf(on.cost, times(rest, this.#haste));
    const shared =
      commodity === 'water' ? [] : all.legs.filter(({ leg }) => this.#mayShare(leg, on.stopHalts));
    // Of these each promises too much in its own way.
    for (const one of shared) {
      const less = this.#sharedLater(one.leg, on.stopHalts);
      const choices = choicesOf([one]);
      this.#push(on, { commodity, beside, cost: sumOf(cost, less), choices });
    }
    const choices = shared.length === 0 ? all : choicesOf(all.legs.filter((one) => !shared.includes(one)));
    if (choices.legs.length === 0) return;
    const less = commodity === 'water' ? this.#sharedLater(beside, on.stopHalts) : NO_COST;
    this.#push(on, { commodity, beside, cost: sumOf(cost, less), choices });
  }

  /** The way that a branch is at; null where it does not hold, or one that is known is as good. */
  #wayOf({ on, commodity, leg, beside, masses, reachedM }: Branch): Way | null {
    this.#within.effort.left -= 1;
    const legs = twoLegs(commodity, leg, beside);
    const { fuel, water } = legs;
    const { kept, marginM, stopHalts, before } = on;
    const { failures } = this.#facts;
    const open =
      failures === null || before === null
        ? NONE_OPEN
        : openGoingOn(failures, before, legs, { open: on.open, reachedM });
    if (open === null) return null;
    let { cost } = on;
    if (kept.fuel === undefined) cost = sumOf(cost, fuel.cost);
    if (kept.water === undefined) cost = sumOf(cost, water.cost);
    const spareM = { fuel: kept.fuel ?? fuel.hop.spareM, water: kept.water ?? water.hop.spareM };
    // Each part by name: a copy of all of `on` takes several times as long, and this is done a million times.
    const way: Way = {
      legs,
      spareM,
      marginM,
      cost,
      masses,
      reachedM,
      stopHalts,
      open,
      before,
      isPassed: false,
    };
    return this.#known.isNew(way) ? way : null;
  }

  /**
   * What the promise of fuel counts too much where it may still halt at a stop at which water did: of that only what is
   * beyond the detour to the water is to be paid.
   */
  #sharedLater(fuel: SearchLeg, stopHalts: StopHalts | null): Cost {
    if (stopHalts === null || !this.#mayShare(fuel, stopHalts)) return NO_COST;
    const paid = together(stopHalts.cost);
    const own = stopHalts.cost.fuel;
    return times(
      haltingCost({ lost: own.lost - paid.lost, driving: own.driving - paid.driving }),
      this.#haste,
    );
  }

  #mayShare({ hop }: SearchLeg, stopHalts: StopHalts | null): boolean {
    return stopHalts !== null && at(this.#facts.tables.fuel.stops, hop.to) === stopHalts.stop;
  }

  /** Makes the halts at the next place where a leg ends, and goes on from there. */
  #goOn(way: Way): void {
    const { tables } = this.#facts;
    const atM = way.reachedM;
    const ends = byCommodity(
      (commodity) => way.legs[commodity].end.atM === atM && !isLast(tables[commodity], way.legs[commodity]),
    );
    const spareM = spareAfterHalts(this.#facts.tables, way, ends);
    if (spareM === null) return;
    const { failures } = this.#facts;
    const stopHalts = haltsWith(this.#facts.tables, way, ends);
    const on = {
      cost: sumOf(way.cost, haltingCost(moreOf(way.stopHalts, stopHalts))),
      marginM: Math.min(
        way.marginM,
        ends.fuel ? spareM.fuel : Number.MAX_VALUE,
        ends.water ? spareM.water : Number.MAX_VALUE,
      ),
      masses: way.masses,
      stopHalts,
      open: failures === null ? NONE_OPEN : openComingTo(failures, way, ends),
      before: way,
      kept: { ...(ends.fuel ? {} : { fuel: spareM.fuel }), ...(ends.water ? {} : { water: spareM.water }) },
    };
    if (!this.#known.isNewStart(on, ends)) return;
    const { fuel, water } = way.legs;
    if (ends.fuel && ends.water) this.#branchBoth({ fuel: fuel.hop.to, water: water.hop.to }, on);
    else this.#branchOne(ends.fuel ? 'fuel' : 'water', way.legs, on);
  }
}

const twoLegs = (commodity: Commodity, leg: SearchLeg, beside: SearchLeg): Way['legs'] =>
  commodity === 'fuel' ? { fuel: leg, water: beside } : { fuel: beside, water: leg };

const isEnd = ({ fuel, water }: SearchFacts['tables'], { legs }: Way): boolean =>
  isLast(fuel, legs.fuel) && isLast(water, legs.water);

const cansOf = ({ masses: { cans } }: Pick<Way, 'masses'>): number => cans.fuel + cans.water;

function planOf(last: Way): JointPlan {
  const ways: Way[] = [];
  for (let way: Way | null = last; way !== null; way = way.before) ways.unshift(way);
  const legs = byCommodity((commodity) => [...new Set(ways.map((way) => way.legs[commodity]))]);
  return { legs, cost: last.cost, leastMarginM: mostMarginM(last) };
}
