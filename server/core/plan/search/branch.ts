import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import { type Cost, compareCosts, NO_COST, sumOf } from './cost.ts';
import type { MassesSoFar } from './masses-so-far.ts';
import type { SearchLeg, SideTable } from './side-table.ts';
import type { ToGo } from './to-go.ts';
import type { OpenPlace, StopHalts, Way } from './way.ts';

/** How ways go on from one. */
export interface GoingOn {
  readonly cost: Cost;
  readonly marginM: number;
  readonly masses: MassesSoFar;
  readonly stopHalts: StopHalts | null;
  readonly open: readonly OpenPlace[];
  /** Null at the start. */
  readonly before: Way | null;
  /** What legs that go on still bear. */
  readonly kept: Partial<Record<Commodity, number>>;
}

/** A leg that may be chosen, with what it and all that follows cost at the least. */
export interface RankedLeg {
  readonly leg: SearchLeg;
  readonly promise: Cost;
}

/**
 * The ways that go on from one with a leg of one commodity, beside one of the other. They are made one by one, the most
 * promising first: most of them never are.
 */
export class Branch {
  readonly on: GoingOn;
  readonly commodity: Commodity;
  /** Of the other commodity. */
  readonly beside: SearchLeg;
  readonly #choices: readonly RankedLeg[];
  readonly #massesWith: Beside['massesWith'];
  /** So many are ever full before the leg that is chosen. */
  readonly cans: number;
  /** What every way costs at the least beyond the promise of its leg. */
  readonly #cost: Cost;
  /** The least margin that a way has at the most but for that of its leg, metres. */
  readonly #mostMarginM: number;
  #index = -1;
  /** What the next way leaves of the permitted masses. */
  masses: MassesSoFar;
  /** What the next way is looked at by: what it costs with what is to come at the least. */
  order: Cost = NO_COST;
  /** Of plans that go on from the next way the least margin is no more, metres. */
  marginM = 0;
  /** The next place where a leg of the next way ends. */
  reachedM = 0;

  constructor(on: GoingOn, { commodity, beside, cost, choices, massesWith }: Beside) {
    this.on = on;
    this.masses = on.masses;
    this.#massesWith = massesWith;
    this.commodity = commodity;
    this.beside = beside;
    this.#cost = cost;
    this.cans = on.masses.cans.fuel + on.masses.cans.water;
    const { fuel = beside.hop.spareM, water = beside.hop.spareM } = on.kept;
    this.#mostMarginM = Math.min(on.marginM, commodity === 'fuel' ? water : fuel);
    this.#choices = choices.haveTies ? inOrder(choices.legs, this.#mostMarginM) : choices.legs;
  }

  /** The leg of the next way. */
  get leg(): SearchLeg {
    return at(this.#choices, this.#index).leg;
  }

  /** Goes on to the next way that the masses bear, the first one to begin with; false where there is none. */
  advance(): boolean {
    for (let index = this.#index + 1; index < this.#choices.length; index += 1) {
      const { leg, promise } = at(this.#choices, index);
      const masses = this.#massesWith(leg, this);
      if (masses === null) continue;
      this.#index = index;
      this.masses = masses;
      this.order = sumOf(this.#cost, promise);
      this.marginM = Math.min(this.#mostMarginM, leg.hop.spareM);
      this.reachedM = Math.min(this.beside.end.atM, leg.end.atM);
      return true;
    }
    return false;
  }
}

/** What a branch chooses from, beside what. */
export interface Beside {
  readonly commodity: Commodity;
  readonly beside: SearchLeg;
  readonly cost: Cost;
  readonly choices: Choices;
  /** What is left of the permitted masses with a leg chosen; null where it is less than nothing. */
  readonly massesWith: (leg: SearchLeg, branch: Branch) => MassesSoFar | null;
}

/** Legs that may be chosen, the most promising first. */
export interface Choices {
  readonly legs: readonly RankedLeg[];
  /** Whether any promise as much. */
  readonly haveTies: boolean;
}

/** The legs of a commodity from an edge that lead to the end with at most so many cans, where what is to come weighs so many times. */
export function choicesFrom({ legsFrom }: SideTable, from: number, within: RankedWithin): Choices {
  const { cans, toGo, haste } = within;
  const ranked: RankedLeg[] = [];
  for (const leg of at(legsFrom, from)) {
    const rest = leg.hop.cans <= cans ? toGo.after(leg) : null;
    if (rest !== null) ranked.push({ leg, promise: sumOf(leg.cost, times(rest, haste)) });
  }
  return choicesOf(inOrder(ranked, Number.MAX_VALUE));
}

export const choicesOf = (legs: readonly RankedLeg[]): Choices => ({
  legs,
  haveTies: legs.some(({ promise }, index) => {
    const before = legs[index - 1];
    return before !== undefined && compareCosts(before.promise, promise) === 0;
  }),
});

/** Of those that promise as much first what leaves the most margin, which is so much at the most; then the longest. */
const inOrder = (legs: readonly RankedLeg[], mostMarginM: number): RankedLeg[] =>
  [...legs].sort(
    (a, b) =>
      compareCosts(a.promise, b.promise) ||
      Math.min(mostMarginM, b.leg.hop.spareM) - Math.min(mostMarginM, a.leg.hop.spareM) ||
      b.leg.end.atM - a.leg.end.atM,
  );

interface RankedWithin {
  readonly cans: number;
  readonly toGo: ToGo;
  readonly haste: number;
}

/** A cost so many times. */
export function times(cost: Cost, count: number): Cost {
  let all = cost;
  for (let more = 1; more < count; more += 1) all = sumOf(all, cost);
  return all;
}
