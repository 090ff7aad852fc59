import { type CarrySide, cansAllowed, edgeAt, edgesAfter } from '../side/carry-side.ts';
import { costOf, type Halt, haltsBetween } from '../side/halts.ts';
import { isBound } from '../side/supply-edge.ts';
import { bearableL, fewestCans, spareM } from './bearable.ts';
import { canMetres } from './can-metres.ts';
import { type Hop, type Hops, type Leg, lastHop } from './leg.ts';
import { alongL, filledNeed } from './leg-need.ts';
import { type Departure, fullDeparture } from './stock.ts';

/** Numbers of full cans beyond the fewest that are to be looked at between two edges. */
export type CanCounts = (from: number, to: number, fewest: number) => readonly number[];

/**
 * Every leg of one hop that a plan of one commodity may be made of: from each supply that gives all that is wanted to
 * each later one that can be reached with at most `mostCans` cans, with the fewest cans that it needs, and with more
 * where halts of the other commodity may ask for them (or `moreCans` does).
 */
export function directLegs(side: CarrySide, foreign: readonly Halt[], moreCans: CanCounts = () => []): Leg[] {
  const legs: Leg[] = [];
  for (const [from, edge] of side.edges.entries()) {
    if (isBound(edge)) continue;
    const mostL = bearableL(side, fullDeparture(side, from, cansAllowed(side, from)), null);
    for (const [to, end] of edgesAfter(side, from)) {
      if (alongL(side, { from, to }) > mostL + 1) break;
      if (isBound(end)) continue;
      for (const cans of countsOver(side, { from, to }, foreign, moreCans))
        legs.push(legOver(side, [hopWith(side, { from, to }, fullDeparture(side, from, cans))]));
    }
  }
  return legs;
}

/** Numbers of cans with which a way of one hop is worth looking at, in order. */
function countsOver(
  side: CarrySide,
  { from, to }: Pick<Hop, 'from' | 'to'>,
  foreign: readonly Halt[],
  moreCans: CanCounts,
): number[] {
  const fewest = fewestCans(side, { from, to, viaM: 0 });
  if (fewest === null) return [];
  const allowed = cansAllowed(side, from);
  const allM = costOf(haltsBetween(foreign, edgeAt(side, from), edgeAt(side, to)));
  const most = fewestCans(side, { from, to, viaM: allM }) ?? allowed;
  const counts = new Set<number>();
  for (let cans = fewest; cans <= most; cans += 1) counts.add(cans);
  for (const cans of moreCans(from, to, fewest)) if (cans <= allowed) counts.add(cans);
  return [...counts].sort((a, b) => a - b);
}

/** A hop left with so much; `spareM` is negative where it does not bear even its own way. */
export function hopWith(side: CarrySide, { from, to }: Pick<Hop, 'from' | 'to'>, departure: Departure): Hop {
  const { tankL, cans, filledL } = departure;
  const need = filledNeed(side, { from, to }, filledL);
  return {
    from,
    to,
    tankL,
    cans,
    filledL,
    spareM: spareM(side, need, bearableL(side, departure, edgeAt(side, to).atM)),
  };
}

export function legOver(side: CarrySide, hops: Hops): Leg {
  const [first] = hops;
  const canM = hops.reduce((sum, hop) => sum + canMetres(side, hop), 0);
  const spareL =
    hops.length > 1
      ? 0
      : bearableL(side, first, edgeAt(side, first.to).atM) - filledNeed(side, first, first.filledL).needL;
  return { from: first.from, to: lastHop(hops).to, hops, spareL, canM };
}
