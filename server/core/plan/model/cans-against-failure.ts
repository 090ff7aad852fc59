import type { Commodity } from '../../../contract/common.ts';
import { type FailingSide, onTheWay, reachesBack, reachesOn } from '../failure/reach.ts';
import type { CanCounts } from '../legs/direct-legs.ts';
import type { Hop } from '../legs/leg.ts';
import { alongL } from '../legs/leg-need.ts';
import { fullDeparture } from '../legs/stock.ts';
import type { CarryQuestion, FailureRule } from '../question/carry-question.ts';
import { type CarrySide, edgeAt, endOf, endsOf } from '../side/carry-side.ts';
import type { Halt } from '../side/halts.ts';
import { otherOf } from '../side/other-of.ts';

/**
 * Numbers of full cans that are worth having against a failure, beyond the fewest: with each of them more is reached, on
 * or back, than with one can less.
 */
export function cansAgainstFailure(
  { sides }: CarryQuestion,
  commodity: Commodity,
  { spendReserve }: FailureRule,
  foreign: readonly Halt[],
): CanCounts {
  const side = sides[commodity];
  const failing = { side, foreign, spendReserve };
  const places = sides[otherOf(commodity)].edges.filter(({ kind }) => kind === 'passing');
  const lastFrom = lastEdges(side);
  return (from, to, fewest) => {
    const [start, end] = endsOf(side, { from, to });
    const between = places.filter(({ atM }) => atM > start.atM && atM < end.atM).map(onTheWay);
    const hopWith = (cans: number): Hop => ({ from, to, ...fullDeparture(side, from, cans), spareM: 0 });
    const counts: number[] = [];
    let less = hopWith(fewest);
    for (let cans = fewest + 1; cans <= side.mostCans; cans += 1) {
      const more = hopWith(cans);
      const isMore =
        [end, ...between].some(
          (place) => reachesBack(failing, more, place) !== reachesBack(failing, less, place),
        ) || reachesOther(failing, { less, more, last: lastFrom[to] ?? to });
      if (isMore) counts.push(cans);
      less = more;
    }
    return counts;
  };
}

/** Two hops that differ in what is aboard, and the index of the last edge that may be gone on to. */
interface TwoHops {
  readonly less: Hop;
  readonly more: Hop;
  readonly last: number;
}

/** Whether edges are reached with more aboard that are not with less when a hop's end gives nothing: the farthest first, where they lie. */
function reachesOther(failing: FailingSide, { less, more, last }: TwoHops): boolean {
  for (let next = lastWithin(failing.side, more, last); next > more.to; next -= 1)
    if (reaches(failing, more, next) !== reaches(failing, less, next)) return true;
  return false;
}

const reaches = (failing: FailingSide, hop: Hop, to: number): boolean =>
  alongL(failing.side, { from: hop.from, to }) <= hop.filledL && reachesOn(failing, hop, [{ ...hop, to }]);

/** The index of the last edge, of those up to `last`, to which no more goes on the route alone than was filled in. */
function lastWithin(side: CarrySide, { from, to, filledL }: Hop, last: number): number {
  let low = to;
  let high = last;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (alongL(side, { from, to: middle }) <= filledL) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** By edge the last one to which one may go on from it: the next stop that must be made, or the end. */
function lastEdges(side: CarrySide): readonly number[] {
  const last: number[] = [];
  let next = endOf(side);
  for (let index = endOf(side); index >= 0; index -= 1) {
    last[index] = next;
    if (edgeAt(side, index).mustStop === true) next = index;
  }
  return last;
}
