import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Cans } from '../question/can-limits.ts';
import type { MassLimit } from '../question/mass-room.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import {
  type Cost,
  compareCosts,
  type HaltCost,
  haltingCost,
  halts,
  NO_COST,
  NO_HALT,
  sumOf,
} from './cost.ts';
import type { FailingPlace, FailureTable } from './failure-table.ts';
import { Heap } from './heap.ts';
import { haltOnLegM, isLast, type SearchLeg, type SideTable } from './side-table.ts';
import type { ToGo } from './to-go.ts';

/** What both commodities are searched with. */
export interface SearchFacts {
  readonly tables: Readonly<Record<Commodity, SideTable>>;
  /** Null where no stop has to be able to fail. */
  readonly failures: Readonly<Record<Commodity, FailureTable>> | null;
  readonly limits: readonly MassLimit[];
  /** Every leg has so many metres of detour to spare beyond its halts. */
  readonly leastM: number;
}

/** With at most so many cans; `toGo` is of as many. */
export interface SearchWithin {
  readonly cans: Cans;
  readonly toGo: Readonly<Record<Commodity, ToGo>>;
  /** Only as many empty cans weigh as both legs have full; else all that there may be. */
  readonly fewestEmpty?: boolean;
  /** Whether a plan that costs so much at the least is of no use any more. */
  readonly isUseless: (least: Cost) => boolean;
  /** One less with each way that is looked at; the search is given up when none are left. */
  readonly effort: { left: number };
}

/** Whether the permitted masses bear two legs where both are under way, with so many empty cans aboard. */
function areBearable(
  limits: readonly MassLimit[],
  { fuel, water }: Readonly<Record<Commodity, SearchLeg>>,
  cans: Cans,
): boolean {
  const overlapM = Math.min(fuel.end.atM, water.end.atM) - Math.max(fuel.start.atM, water.start.atM);
  if (overlapM <= 0) return true;
  return limits.every(({ canKg, leftKg }, number) => {
    const emptyKg = cans.fuel * canKg.fuel.empty + cans.water * canKg.water.empty;
    return emptyKg + at(fuel.kg, number) + at(water.kg, number) <= leftKg + TOLERANCE;
  });
}

/** Whether the permitted masses bear a plan with so many cans aboard. */
export const isBearable = (limits: readonly MassLimit[], { legs }: JointPlan, cans: Cans): boolean =>
  legs.fuel.every((fuel) => legs.water.every((water) => areBearable(limits, { fuel, water }, cans)));

/** Two chains of legs from start to end, as their last legs and what led to them. */
export interface JointPlan {
  readonly legs: Readonly<Record<Commodity, readonly SearchLeg[]>>;
  readonly cost: Cost;
}

/** Both commodities on the way: the leg that each is on. */
interface Way {
  readonly legs: Readonly<Record<Commodity, SearchLeg>>;
  /** What each leg still bears of halts of the other commodity. */
  readonly spareM: Readonly<Record<Commodity, number>>;
  /** Of all legs so far, and of halts made. */
  readonly cost: Cost;
  /** At the stop that was come to last. */
  readonly stopHalts: StopHalts | null;
  /** With what is to come at the least. */
  readonly least: Cost;
  readonly open: readonly OpenPlace[];
  readonly before: Way | null;
}

/** Halts of both commodities at one stop so far: what each costs alone. */
interface StopHalts {
  readonly stop: number;
  readonly cost: Readonly<Record<Commodity, HaltCost>>;
}

/** A place that was come to, and which ways are gone when its stop fails: it has to leave one that all bear. */
interface OpenPlace {
  readonly place: FailingPlace;
  readonly mustGoOn: boolean;
  readonly mustGoBack: boolean;
}

const NONE_OPEN: readonly OpenPlace[] = [];

/** As the solver's own: rows may be broken by so much. */
const TOLERANCE = 1e-7;

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
  readonly #heap = new Heap<Way>((a, b) => compareCosts(a.least, b.least) || reachedM(b) - reachedM(a));
  readonly #known = new Map<string, Way[]>();

  constructor(facts: SearchFacts, within: SearchWithin) {
    this.#facts = facts;
    this.#within = within;
  }

  run(): JointPlan | null | 'given up' {
    const { tables } = this.#facts;
    const { effort, isUseless } = this.#within;
    const first = byCommodity((commodity) => at(tables[commodity].legsFrom, 0));
    this.#pushEach(first, { cost: NO_COST, stopHalts: null, open: NONE_OPEN, before: null, kept: {} });
    for (let way = this.#heap.pop(); way !== undefined; way = this.#heap.pop()) {
      if (effort.left <= 0) return 'given up';
      if (isUseless(way.least)) return null;
      if (COMMODITIES.every((commodity) => isLast(tables[commodity], way.legs[commodity])))
        return planOf(way);
      if (this.#isNew(way)) this.#goOn(way);
    }
    return null;
  }

  /** Pushes every way that goes on with one of the legs of each commodity. */
  #pushEach(choices: Readonly<Record<Commodity, readonly SearchLeg[]>>, on: GoingOn): void {
    for (const fuel of choices.fuel) {
      if (!this.#mayChoose('fuel', fuel, on)) continue;
      for (const water of choices.water)
        if (this.#mayChoose('water', water, on)) this.#push({ fuel, water }, on);
    }
  }

  #mayChoose(commodity: Commodity, leg: SearchLeg, { kept }: GoingOn): boolean {
    if (kept[commodity] !== undefined) return true;
    const { cans, toGo } = this.#within;
    return leg.hop.cans <= cans[commodity] && toGo[commodity].after(leg) !== null;
  }

  #push(legs: Way['legs'], { cost: before, stopHalts, open: openThere, before: from, kept }: GoingOn): void {
    const { toGo, effort } = this.#within;
    if (!this.#fits(legs)) return;
    const open = from === null ? openThere : this.#openGoingOn(legs, from, openThere);
    if (open === null) return;
    let cost = before;
    for (const commodity of COMMODITIES)
      if (kept[commodity] === undefined) cost = sumOf(cost, legs[commodity].cost);
    let least = sumOf(cost, this.#sharedLater(legs, stopHalts));
    for (const commodity of COMMODITIES) {
      const rest = toGo[commodity].after(legs[commodity]);
      if (rest === null) return;
      least = sumOf(least, rest);
    }
    effort.left -= 1;
    const spareM = byCommodity((commodity) => kept[commodity] ?? this.#spareM(legs[commodity]));
    this.#heap.push({ legs, spareM, cost, stopHalts, least, open, before: from });
  }

  /**
   * What the promise of fuel counts too much where it may still halt at a stop at which water did: of that only what is
   * beyond the detour to the water is to be paid.
   */
  #sharedLater({ fuel }: Way['legs'], stopHalts: StopHalts | null): Cost {
    if (stopHalts === null || at(this.#facts.tables.fuel.stops, fuel.hop.to) !== stopHalts.stop)
      return NO_COST;
    const paid = together(stopHalts.cost);
    const own = stopHalts.cost.fuel;
    return haltingCost({ lost: own.lost - paid.lost, driving: own.driving - paid.driving });
  }

  /** What a leg bears of halts with what is to be left; endless where it bears all. */
  #spareM({ hop, spareM, allM }: SearchLeg): number {
    const { leastM } = this.#facts;
    if (leastM === 0) return spareM;
    return allM <= hop.spareM - leastM ? Number.POSITIVE_INFINITY : hop.spareM - leastM;
  }

  /** Whether the permitted masses hold where both legs are under way. */
  #fits({ fuel, water }: Way['legs']): boolean {
    const { cans, fewestEmpty = false } = this.#within;
    const empty = fewestEmpty ? { fuel: fuel.hop.cans, water: water.hop.cans } : cans;
    return areBearable(this.#facts.limits, { fuel, water }, empty);
  }

  /** Whether no way that was gone on from is as good in all that matters from there on. */
  #isNew(way: Way): boolean {
    const { fuel, water } = way.legs;
    const stopHalts = this.#openHalts(way);
    const place =
      this.#facts.failures === null
        ? `${fuel.hop.to} ${water.hop.to} ${stopHalts}`
        : `${fuel.number} ${water.number} ${stopHalts} ${way.open.map(nameOf)}`;
    const known = this.#known.get(place);
    if (known === undefined) {
      this.#known.set(place, [way]);
      return true;
    }
    if (known.some((other) => isAsGood(other, way))) return false;
    known.push(way);
    return true;
  }

  /** The halts made at the stop at which the next one is made as well: what that costs hangs on them. */
  #openHalts({ legs, stopHalts }: Way): string {
    if (stopHalts === null) return '';
    const { tables } = this.#facts;
    const isNext = COMMODITIES.some(
      (commodity) => at(tables[commodity].stops, legs[commodity].hop.to) === stopHalts.stop,
    );
    const { fuel, water } = stopHalts.cost;
    return isNext ? `${fuel.lost} ${fuel.driving} ${water.lost} ${water.driving}` : '';
  }

  /** Makes the halts at the next place where a leg ends, and goes on from there. */
  #goOn(way: Way): void {
    const { tables } = this.#facts;
    const atM = reachedM(way);
    const ends = byCommodity(
      (commodity) => way.legs[commodity].end.atM === atM && !isLast(tables[commodity], way.legs[commodity]),
    );
    const spareM = this.#afterHalts(way, ends);
    const open = this.#openComingTo(way, ends);
    if (spareM === null || open === null) return;
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
    this.#pushEach(choices, { cost, stopHalts, open, before: way, kept });
  }

  /** What legs bear of further halts once those that end have ended; null where one does not bear the other's. */
  #afterHalts({ legs, spareM }: Way, ends: Ends): Way['spareM'] | null {
    const left = byCommodity((commodity) => {
      const other = otherOf(commodity);
      const halt = ends[other] ? at(this.#facts.tables[other].halts, legs[other].hop.to) : null;
      return halt === null ? spareM[commodity] : spareM[commodity] - haltOnLegM(legs[commodity], halt);
    });
    return COMMODITIES.every((commodity) => left[commodity] >= -TOLERANCE) ? left : null;
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
    const atM = reachedM(way);
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
    const { failures } = this.#facts;
    if (failures === null || open.length === 0) return open;
    const mustGoBack = (place: FailingPlace): boolean =>
      COMMODITIES.some((commodity) => {
        const [leg, next] = [from.legs[commodity], legs[commodity]];
        if (leg === next || !failures[commodity].foundBy(leg).includes(place)) return false;
        return !failures[commodity].bearsOn(leg, next, place);
      });
    return leavingWays(open.map((one) => ({ ...one, mustGoBack: one.mustGoBack || mustGoBack(one.place) })));
  }
}

const NO_HALTS: StopHalts['cost'] = { fuel: NO_HALT, water: NO_HALT };

/** Fuel and water of one stop are one detour, the longer of the two. */
const together = ({ fuel, water }: StopHalts['cost']): HaltCost => ({
  lost: Math.max(fuel.lost, water.lost),
  driving: Math.max(fuel.driving, water.driving),
});

/** What further halts cost more than those before them. */
function moreOf(before: StopHalts | null, after: StopHalts | null): HaltCost {
  if (after === null || after === before) return NO_HALT;
  const all = together(after.cost);
  if (after.stop !== before?.stop) return all;
  const paid = together(before.cost);
  return { lost: all.lost - paid.lost, driving: all.driving - paid.driving };
}

const leavingWays = (open: readonly OpenPlace[]): readonly OpenPlace[] | null =>
  open.some(({ mustGoOn, mustGoBack }) => mustGoOn && mustGoBack) ? null : open;

const nameOf = ({ place, mustGoOn, mustGoBack }: OpenPlace): string =>
  `${place.number} ${mustGoOn} ${mustGoBack}`;

type Ends = Readonly<Record<Commodity, boolean>>;

/** How ways go on from one. */
interface GoingOn {
  readonly cost: Cost;
  readonly stopHalts: StopHalts | null;
  readonly open: readonly OpenPlace[];
  readonly before: Way | null;
  /** What legs that go on still bear. */
  readonly kept: Partial<Record<Commodity, number>>;
}

/** The next place where a leg ends. */
const reachedM = ({ legs }: Way): number => Math.min(legs.fuel.end.atM, legs.water.end.atM);

/** Whether a way that costs no more leaves as much room for halts and masses as another at the same places. */
const isAsGood = (way: Way, than: Way): boolean =>
  COMMODITIES.every(
    (commodity) =>
      way.spareM[commodity] >= than.spareM[commodity] &&
      way.legs[commodity].kg.every((kg, number) => kg <= at(than.legs[commodity].kg, number)),
  );

function planOf(last: Way): JointPlan {
  const ways: Way[] = [];
  for (let way: Way | null = last; way !== null; way = way.before) ways.unshift(way);
  const legs = byCommodity((commodity) => [...new Set(ways.map((way) => way.legs[commodity]))]);
  return { legs, cost: last.cost };
}
