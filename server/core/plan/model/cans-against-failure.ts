import type { Commodity } from '../../../contract/common.ts';
import { type FailingSide, onTheWay, reachesBack, reachesOn } from '../failure/reach.ts';
import type { CanCounts } from '../legs/direct-legs.ts';
import type { Hop } from '../legs/leg.ts';
import { alongL } from '../legs/leg-need.ts';
import { fullDeparture } from '../legs/stock.ts';
import type { CarryQuestion, FailureRule } from '../question/carry-question.ts';
import { edgesAfter, endsOf } from '../side/carry-side.ts';
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
  return (from, to, fewest) => {
    const [start, end] = endsOf(side, { from, to });
    const between = places.filter(({ atM }) => atM > start.atM && atM < end.atM).map(onTheWay);
    const reach = (cans: number): string => {
      const hop = { from, to, ...fullDeparture(side, from, cans), spareM: 0 };
      const back = [end, ...between].map((place) => reachesBack(failing, hop, place));
      return `${[...reachedFrom(failing, hop)]} ${back}`;
    };
    const counts: number[] = [];
    let before = reach(fewest);
    for (let cans = fewest + 1; cans <= side.mostCans; cans += 1) {
      const now = reach(cans);
      if (now !== before) counts.push(cans);
      before = now;
    }
    return counts;
  };
}

/** Indexes of the edges that are still reached when a hop's end gives nothing. */
function* reachedFrom(failing: FailingSide, hop: Hop): Generator<number> {
  for (const [next] of edgesAfter(failing.side, hop.to)) {
    if (alongL(failing.side, { from: hop.from, to: next }) > hop.filledL) return;
    if (reachesOn(failing, hop, [{ ...hop, to: next }])) yield next;
  }
}
