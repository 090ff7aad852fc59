import type { Commodity } from '../../../contract/common.ts';
import { numberIn } from '../../lists/at.ts';
import type { GoingOn } from './branch.ts';
import { compareCosts } from './cost.ts';
import { leaveAsMuch } from './masses-so-far.ts';
import type { SearchFacts } from './search-facts.ts';
import type { SearchLeg } from './side-table.ts';
import { bearsHalts, type Ends, haltsName, nameOf, type OpenPlace, type StopHalts, type Way } from './way.ts';

/** Entries by where their legs end, and by what hangs on how they came there; nearly always that is nothing. */
class ByPlace<T> {
  readonly #plain: T[][] = [];
  readonly #named = new Map<string, T[]>();

  of(ends: number, name: string): T[] {
    const known = name === '' ? this.#plain[ends] : this.#named.get(`${ends} ${name}`);
    if (known !== undefined) return known;
    const none: T[] = [];
    if (name === '') this.#plain[ends] = none;
    else this.#named.set(`${ends} ${name}`, none);
    return none;
  }
}

/** Puts an entry in the place of those that it is as good as; false where one that is known is as good as it. */
function takesIts<T>(
  known: T[],
  entry: T,
  asGood: (one: T, than: T) => boolean,
  pass: (one: T) => void,
): boolean {
  let place = 0;
  for (const other of known) {
    if (asGood(other, entry)) {
      // What has stood for one often stands for the next.
      known[place] = known[0] ?? other;
      known[0] = other;
      return false;
    }
    place += 1;
  }
  let left = 0;
  for (const other of known) {
    if (asGood(entry, other)) pass(other);
    else {
      known[left] = other;
      left += 1;
    }
  }
  known.length = left;
  known.push(entry);
  return true;
}

/** What ways are compared by. */
export type Comparing = Pick<SearchFacts, 'tables' | 'failures'> & { readonly greatestMargin: boolean };

/**
 * The ways that a search knows. A new one is held against those whose legs end at the same places: one that costs no more
 * and leaves as much room for halts, masses and failures, and margin where that is asked for, stands for it.
 */
export class KnownWays {
  readonly #comparing: Comparing;
  readonly #ways = new ByPlace<Way>();
  readonly #starts = new ByPlace<Halted>();

  constructor(comparing: Comparing) {
    this.#comparing = comparing;
  }

  /** Whether no way that is known is as good. It is known from then on, and those that it is as good as are passed. */
  isNew(way: Way): boolean {
    const known = this.#ways.of(this.#endsOf(way), this.#nameOf(way, way.stopHalts, way.open));
    return takesIts(known, way, this.#isAsGood, pass);
  }

  /** The same of a way whose legs have ended where it was come to: what those were hardly matters any more. */
  isNewStart(start: Halted, ends: Ends): boolean {
    const { before, stopHalts, open } = start;
    const which = (ends.fuel ? 1 : 0) + (ends.water ? 2 : 0);
    const place = 4 * this.#endsOf(before) + which;
    const known = this.#starts.of(place, this.#nameOf(before, stopHalts, open, ends));
    if (known.some(isOfPassed)) known.splice(0, known.length, ...known.filter((one) => !isOfPassed(one)));
    return takesIts(known, start, this.#isAsGoodStart, passStart);
  }

  #endsOf({ legs }: Way): number {
    return legs.fuel.hop.to * this.#comparing.tables.water.side.edges.length + legs.water.hop.to;
  }

  /** The halts made at a stop at which the next one may be made as well, what that costs hangs on them; and open places. */
  #nameOf({ legs }: Way, stopHalts: StopHalts | null, open: readonly OpenPlace[], ends = NONE_ENDS): string {
    const failing = open.length === 0 ? '' : open.map(nameOf).join();
    if (stopHalts === null) return failing;
    const { fuel, water } = this.#comparing.tables;
    const { stop } = stopHalts;
    const isOpen =
      fuel.stops[legs.fuel.hop.to + (ends.fuel ? 1 : 0)] === stop ||
      water.stops[legs.water.hop.to + (ends.water ? 1 : 0)] === stop;
    return isOpen ? `${haltsName(stopHalts)} ${failing}` : failing;
  }

  readonly #isAsGood = (way: Way, than: Way): boolean => {
    const byCost = compareCosts(way.cost, than.cost);
    if (byCost > 0) return false;
    const { fuel, water } = way.legs;
    const [fuelOfThan, waterOfThan] = [than.legs.fuel, than.legs.water];
    // Where a leg ends first no further halt comes on it, and no leg of the other commodity that begins later meets it.
    const fuelIsLast = fuel.end.atM >= water.end.atM;
    const waterIsLast = water.end.atM >= fuel.end.atM;
    if (byCost === 0 && this.#comparing.greatestMargin && !hasAsMuchMargin(way, than)) return false;
    return (
      leaveAsMuch(way.masses, than.masses) &&
      (!fuelIsLast || bearsAsMuch(fuel, way.spareM.fuel, fuelOfThan, than.spareM.fuel)) &&
      (!waterIsLast || bearsAsMuch(water, way.spareM.water, waterOfThan, than.spareM.water)) &&
      this.#isAsSafe(way, than)
    );
  };

  #isAsSafe({ legs, reachedM }: Way, than: Way): boolean {
    const { failures } = this.#comparing;
    return (
      failures === null ||
      (failures.fuel.isAsSafe(legs.fuel, than.legs.fuel, reachedM) &&
        failures.water.isAsSafe(legs.water, than.legs.water, reachedM))
    );
  }

  readonly #isAsGoodStart = (start: Halted, than: Halted): boolean => {
    const byCost = compareCosts(start.cost, than.cost);
    if (byCost > 0) return false;
    const asMuch =
      start.marginM >= than.marginM &&
      (start.kept.fuel ?? 0) >= (than.kept.fuel ?? 0) &&
      (start.kept.water ?? 0) >= (than.kept.water ?? 0);
    if (byCost === 0 && this.#comparing.greatestMargin && !asMuch) return false;
    return (
      leaveAsMuch(start.masses, than.masses) &&
      this.#isLegAsGood('fuel', start, than) &&
      this.#isLegAsGood('water', start, than)
    );
  };

  /** Of one that has ended it matters only what is reached from there when its end gives nothing. */
  #isLegAsGood(commodity: Commodity, start: Halted, than: Halted): boolean {
    const [leg, other] = [start.before.legs[commodity], than.before.legs[commodity]];
    if (leg === other && start.kept[commodity] === than.kept[commodity]) return true;
    const failures = this.#comparing.failures?.[commodity] ?? null;
    const [spareM, ofThan] = [start.kept[commodity], than.kept[commodity]];
    if (spareM === undefined || ofThan === undefined)
      return failures === null || start.open.every(({ place }) => failures.isAsSafeAt(place, leg, other));
    const isSafe = failures === null || failures.isAsSafe(leg, other, start.before.reachedM);
    return isSafe && bearsAsMuch(leg, spareM, other, ofThan);
  }
}

/** With halts made where legs ended. */
type Halted = GoingOn & { readonly before: Way };

const NONE_ENDS: Ends = { fuel: false, water: false };

const pass = (way: Way): void => {
  way.isPassed = true;
};

/** A way is no longer gone on from where another start stands for its own. */
const passStart = ({ before }: Halted): void => pass(before);

const isOfPassed = ({ before }: Halted): boolean => before.isPassed;

const hasAsMuchMargin = (way: Way, than: Way): boolean =>
  way.marginM >= than.marginM && way.spareM.fuel >= than.spareM.fuel && way.spareM.water >= than.spareM.water;

/** Whether a leg leaves as much room for halts and masses as another. */
function bearsAsMuch(leg: SearchLeg, spareM: number, than: SearchLeg, spareOfThanM: number): boolean {
  if (bearsHalts(leg, spareM) < bearsHalts(than, spareOfThanM)) return false;
  if (leg === than) return true;
  for (let number = 0; number < leg.kg.length; number += 1)
    if (numberIn(leg.kg, number) > numberIn(than.kg, number)) return false;
  return true;
}
