import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Cans } from '../question/can-limits.ts';
import type { MassLimit } from '../question/mass-room.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import { beyond, type Cost, compareCosts, haltingCost, halts, NO_COST, sumOf } from './cost.ts';
import type { FailingPlace, FailureTable } from './failure-table.ts';
import { Heap } from './heap.ts';
import { areBearable, type MassesLeft, massesLeft, TOLERANCE } from './masses-left.ts';
import { haltOnLegM, isLast, type SearchLeg, type SideTable } from './side-table.ts';
import type { ToGo } from './to-go.ts';
import {
  bearsHalts,
  hasAsMuchMargin,
  leavingWays,
  moreOf,
  mostMarginM,
  NO_HALTS,
  nameOf,
  type OpenPlace,
  type StopHalts,
  together,
  type Way,
} from './way.ts';

/** What both commodities are searched with. */
export interface SearchFacts {
  readonly tables: Readonly<Record<Commodity, SideTable>>;
  /** Null where no stop has to be able to fail. */
  readonly failures: Readonly<Record<Commodity, FailureTable>> | null;
  readonly limits: readonly MassLimit[];
}

/** With at most so many cans; `toGo` is of as many. */
export interface SearchWithin {
  readonly cans: Cans;
  readonly toGo: Readonly<Record<Commodity, ToGo>>;
  /** Only as many empty cans weigh as both legs have full; else all that there may be. */
  readonly fewestEmpty?: boolean;
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

const NONE_OPEN: readonly OpenPlace[] = [];

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
  readonly #heap = new Heap<Way>((a, b) => this.#inOrder(a, b));
  /** The ways that are known, by where their legs end and by what hangs on how they came there. */
  readonly #known = new Map<number, Map<string, readonly Way[]>>();
  readonly #masses: MassesLeft;

  constructor(facts: SearchFacts, within: SearchWithin) {
    this.#facts = facts;
    this.#within = within;
    const { cans, fewestEmpty = false } = within;
    this.#masses = massesLeft(facts.limits, fewestEmpty ? null : cans);
  }

  run(): JointPlan | null | 'given up' {
    const { tables } = this.#facts;
    const { effort } = this.#within;
    const first = byCommodity((commodity) => at(tables[commodity].legsFrom, 0));
    const start = { cost: NO_COST, marginM: Number.MAX_VALUE, stopHalts: null, open: NONE_OPEN };
    this.#pushEach(first, { ...start, before: null, kept: {} });
    for (let way = this.#heap.pop(); way !== undefined; way = this.#heap.pop()) {
      if (effort.left <= 0) return 'given up';
      if (way.isPassed) continue;
      if (COMMODITIES.every((commodity) => isLast(tables[commodity], way.legs[commodity])))
        return planOf(way);
      this.#goOn(way);
    }
    return null;
  }

  /** Below nothing where a way is to be looked at before another. */
  #inOrder(a: Way, b: Way): number {
    const byCost = compareCosts(a.order, b.order);
    if (byCost !== 0) return byCost;
    const byMargin = this.#within.greatestMargin ? mostMarginM(b) - mostMarginM(a) : 0;
    return byMargin || b.reachedM - a.reachedM;
  }

  /** Pushes every way that goes on with one of the legs of each commodity. */
  #pushEach(choices: Readonly<Record<Commodity, readonly SearchLeg[]>>, on: GoingOn): void {
    for (const fuel of choices.fuel) {
      if (!this.#mayChoose('fuel', fuel, on)) continue;
      for (const water of choices.water)
        if (this.#mayChoose('water', water, on) && areBearable(this.#masses, fuel, water))
          this.#push({ fuel, water }, on);
    }
  }

  #mayChoose(commodity: Commodity, leg: SearchLeg, { kept }: GoingOn): boolean {
    if (kept[commodity] !== undefined) return true;
    const { cans, toGo } = this.#within;
    return leg.hop.cans <= cans[commodity] && toGo[commodity].after(leg) !== null;
  }

  #push(legs: Way['legs'], on: GoingOn): void {
    const { effort, isUseless, haste = 1 } = this.#within;
    effort.left -= 1;
    const { kept, marginM, stopHalts, before } = on;
    const { fuel, water } = legs;
    const open = before === null ? on.open : this.#openGoingOn(legs, before, on.open);
    if (open === null) return;
    let { cost } = on;
    if (kept.fuel === undefined) cost = sumOf(cost, fuel.cost);
    if (kept.water === undefined) cost = sumOf(cost, water.cost);
    const spareM = { fuel: kept.fuel ?? fuel.hop.spareM, water: kept.water ?? water.hop.spareM };
    const reachedM = Math.min(fuel.end.atM, water.end.atM);
    // Each part by name: a copy of all of `on` takes several times as long, and this is done a million times.
    const way: Way = {
      legs,
      spareM,
      marginM,
      cost,
      order: cost,
      reachedM,
      stopHalts,
      open,
      before,
      isPassed: false,
    };
    if (!this.#isNew(way)) return;
    const least = this.#leastOf(way);
    if (least === null || isUseless(least, mostMarginM(way))) return;
    way.order = haste === 1 ? least : hasty(cost, least, haste);
    this.#heap.push(way);
  }

  /** What a way costs with what is to come at the least; null where there is no way on. */
  #leastOf({ legs, cost, stopHalts }: Way): Cost | null {
    const { toGo } = this.#within;
    const [fuel, water] = [toGo.fuel.after(legs.fuel), toGo.water.after(legs.water)];
    if (fuel === null || water === null) return null;
    const least = sumOf(cost, sumOf(fuel, water));
    const shared = this.#sharedLater(legs, stopHalts);
    return shared === null ? least : sumOf(least, shared);
  }

  /**
   * What the promise of fuel counts too much where it may still halt at a stop at which water did: of that only what is
   * beyond the detour to the water is to be paid.
   */
  #sharedLater({ fuel }: Way['legs'], stopHalts: StopHalts | null): Cost | null {
    if (stopHalts === null || at(this.#facts.tables.fuel.stops, fuel.hop.to) !== stopHalts.stop) return null;
    const paid = together(stopHalts.cost);
    const own = stopHalts.cost.fuel;
    return haltingCost({ lost: own.lost - paid.lost, driving: own.driving - paid.driving });
  }

  /** Whether no way that is known is as good in all that matters from there on. It is known from then on, in the place of those it is as good as. */
  #isNew(way: Way): boolean {
    const { fuel, water } = way.legs;
    const ends = fuel.hop.to * this.#facts.tables.water.side.edges.length + water.hop.to;
    const there = this.#known.get(ends) ?? new Map<string, readonly Way[]>();
    this.#known.set(ends, there);
    const place = this.#openHalts(way) + way.open.map(nameOf).join();
    const known = there.get(place);
    if (known === undefined) {
      there.set(place, [way]);
      return true;
    }
    if (known.some((other) => this.#isAsGood(other, way))) return false;
    for (const other of known) other.isPassed = this.#isAsGood(way, other);
    there.set(place, [...known.filter(({ isPassed }) => !isPassed), way]);
    return true;
  }

  /** Whether a way costs no more than another at the same places, and leaves as much room for halts, masses and failures. */
  #isAsGood(way: Way, than: Way): boolean {
    const byCost = compareCosts(way.cost, than.cost);
    if (byCost > 0) return false;
    if (byCost === 0 && this.#within.greatestMargin && !hasAsMuchMargin(way, than)) return false;
    return (
      this.#bearsAsMuch(way, than, 'fuel') &&
      this.#bearsAsMuch(way, than, 'water') &&
      this.#isAsSafe(way, than)
    );
  }

  /** Whether the leg of a commodity leaves as much room for halts and masses. */
  #bearsAsMuch(way: Way, than: Way, commodity: Commodity): boolean {
    const [leg, other] = [way.legs[commodity], than.legs[commodity]];
    const { kgOf } = this.#masses;
    return (
      bearsHalts(leg, way.spareM[commodity]) >= bearsHalts(other, than.spareM[commodity]) &&
      leg[kgOf].every((kg, number) => kg <= at(other[kgOf], number))
    );
  }

  #isAsSafe(way: Way, than: Way): boolean {
    const { failures } = this.#facts;
    if (failures === null) return true;
    const atM = way.reachedM;
    return COMMODITIES.every((commodity) =>
      failures[commodity].isAsSafe(way.legs[commodity], than.legs[commodity], atM),
    );
  }

  /** The halts made at the stop at which the next one is made as well: what that costs hangs on them. */
  #openHalts({ legs, stopHalts }: Way): string {
    if (stopHalts === null) return '';
    const { tables } = this.#facts;
    const isNext = COMMODITIES.some(
      (commodity) => at(tables[commodity].stops, legs[commodity].hop.to) === stopHalts.stop,
    );
    const { fuel, water } = stopHalts.cost;
    return isNext ? `${fuel.lost} ${fuel.driving} ${water.lost} ${water.driving} ` : '';
  }

  /** Makes the halts at the next place where a leg ends, and goes on from there. */
  #goOn(way: Way): void {
    const { tables } = this.#facts;
    const atM = way.reachedM;
    const ends = byCommodity(
      (commodity) => way.legs[commodity].end.atM === atM && !isLast(tables[commodity], way.legs[commodity]),
    );
    const spareM = this.#afterHalts(way, ends);
    const open = this.#openComingTo(way, ends);
    if (spareM === null || open === null) return;
    const ended = COMMODITIES.filter((commodity) => ends[commodity]).map((commodity) => spareM[commodity]);
    const marginM = Math.min(way.marginM, ...ended);
    const choices = byCommodity((commodity): readonly SearchLeg[] => {
      const leg = way.legs[commodity];
      return ends[commodity] ? at(tables[commodity].legsFrom, leg.hop.to) : [leg];
    });
    const kept: GoingOn['kept'] = {
      ...(ends.fuel ? {} : { fuel: spareM.fuel }),
      ...(ends.water ? {} : { water: spareM.water }),
    };
    const stopHalts = this.#haltsWith(way, ends);
    const cost = sumOf(way.cost, haltingCost(moreOf(way.stopHalts, stopHalts)));
    this.#pushEach(choices, { cost, marginM, stopHalts, open, before: way, kept });
  }

  /** What legs bear of further halts once those that end have ended; null where one does not bear the other's. */
  #afterHalts({ legs, spareM }: Way, ends: Ends): Way['spareM'] | null {
    const left = byCommodity((commodity) => {
      const other = otherOf(commodity);
      const halt = ends[other] ? at(this.#facts.tables[other].halts, legs[other].hop.to) : null;
      return halt === null ? spareM[commodity] : spareM[commodity] - haltOnLegM(legs[commodity], halt);
    });
    return COMMODITIES.every((commodity) => bearsHalts(legs[commodity], left[commodity]) >= -TOLERANCE)
      ? left
      : null;
  }

  /** The halts made at a stop with those where legs end. */
  #haltsWith({ legs, stopHalts }: Way, ends: Ends): StopHalts | null {
    const { tables } = this.#facts;
    let all = stopHalts;
    for (const commodity of COMMODITIES) {
      const { stops, halting } = tables[commodity];
      const { to } = legs[commodity].hop;
      const stop = ends[commodity] ? at(stops, to) : null;
      if (stop === null) continue;
      const cost = all?.stop === stop ? all.cost : NO_HALTS;
      all = { stop, cost: { ...cost, [commodity]: halts(cost[commodity], at(halting, to)) } };
    }
    return all;
  }

  /** The places that legs end at, with what they bear when their stop fails; null where one leaves no way. */
  #openComingTo(way: Way, ends: Ends): readonly OpenPlace[] | null {
    const { failures } = this.#facts;
    if (failures === null) return NONE_OPEN;
    const atM = way.reachedM;
    const open = new Map(way.open.filter(({ place }) => place.toM >= atM).map((one) => [one.place, one]));
    for (const commodity of COMMODITIES) {
      if (!ends[commodity]) continue;
      const leg = way.legs[commodity];
      const other = otherOf(commodity);
      for (const place of failures[commodity].foundBy(leg)) {
        const before = open.get(place) ?? { place, mustGoOn: false, mustGoBack: false };
        const mustGoOn =
          before.mustGoOn ||
          !failures[commodity].bearsBack(leg) ||
          failures[other].isCaught(way.legs[other], leg.end, place);
        open.set(place, { ...before, mustGoOn });
      }
    }
    return leavingWays([...open.values()]);
  }

  /** The same once it is chosen where to go on to. */
  #openGoingOn(legs: Way['legs'], from: Way, open: readonly OpenPlace[]): readonly OpenPlace[] | null {
    if (open.length === 0) return open;
    const on = open.map((one) => {
      const mustGoBack = COMMODITIES.some((commodity) =>
        this.#mustGoBack(commodity, { legs, from }, one.place),
      );
      return mustGoBack && !one.mustGoBack ? { ...one, mustGoBack } : one;
    });
    return leavingWays(on);
  }

  /** Whether a place that gives nothing, come to on one leg, cannot be gone on from to the end of the next. */
  #mustGoBack(commodity: Commodity, { legs, from }: NextLegs, place: FailingPlace): boolean {
    const { failures } = this.#facts;
    const [leg, next] = [from.legs[commodity], legs[commodity]];
    if (failures === null || leg === next || !failures[commodity].foundBy(leg).includes(place)) return false;
    return !failures[commodity].bearsOn(leg, next, place);
  }
}

/** The legs that are gone on with, and the way before them. */
interface NextLegs {
  readonly legs: Way['legs'];
  readonly from: Way;
}

type Ends = Readonly<Record<Commodity, boolean>>;

/** How ways go on from one. */
interface GoingOn {
  readonly cost: Cost;
  readonly marginM: number;
  readonly stopHalts: StopHalts | null;
  readonly open: readonly OpenPlace[];
  readonly before: Way | null;
  /** What legs that go on still bear. */
  readonly kept: Partial<Record<Commodity, number>>;
}

/** With what is still to come weighed so many times. */
function hasty(cost: Cost, least: Cost, haste: number): Cost {
  let order = least;
  for (let more = 1; more < haste; more += 1) order = sumOf(order, beyond(least, cost));
  return order;
}

function planOf(last: Way): JointPlan {
  const ways: Way[] = [];
  for (let way: Way | null = last; way !== null; way = way.before) ways.unshift(way);
  const legs = byCommodity((commodity) => [...new Set(ways.map((way) => way.legs[commodity]))]);
  return { legs, cost: last.cost, leastMarginM: mostMarginM(last) };
}
