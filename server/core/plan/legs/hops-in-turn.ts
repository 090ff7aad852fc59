import { at } from '../../lists/at.ts';
import { type CarrySide, edgeAt } from '../side/carry-side.ts';
import { bearableL } from './bearable.ts';
import type { Hop, Hops } from './leg.ts';
import { filledNeed, withDetours } from './leg-need.ts';
import { arriveWith, type Departure, refill, type Stock } from './stock.ts';

/** Metres of detours to the other commodity on the way between two edges, by their indexes. */
export type DetoursBetween = (from: number, to: number) => number;

/** A hop behind those before it. */
export interface HopInTurn {
  readonly index: number;
  /** What it is left with, with what those before it came to, and what it needs of that. */
  readonly departure: Departure;
  readonly needL: number;
}

/**
 * Hops one after the other, the first left with `departure`, detours on each: at the supplies between as many cans are
 * filled as the next hop wants, as far as there is enough.
 */
export function* hopsInTurn(
  side: CarrySide,
  first: Departure,
  hops: readonly Pick<Hop, 'from' | 'to' | 'cans'>[],
  viaM: DetoursBetween,
): Generator<HopInTurn> {
  let arrival: Stock | null = null;
  for (const [index, hop] of hops.entries()) {
    const departure: Departure =
      arrival === null ? first : refill(side, edgeAt(side, hop.from), arrival, hop.cans);
    const filling = filledNeed(side, hop, departure.filledL);
    const { needL } = withDetours(side, filling, viaM(hop.from, hop.to));
    yield { index, departure, needL };
    arrival = arriveWith(side, departure, needL);
  }
}

/** A litre this small is float noise. */
const NOISE_L = 1e-7;

/** Whether a leg keeps its reserves when so many metres of detours come on each hop; exact, fills in between included. */
export function holdsOver(side: CarrySide, { hops }: { hops: Hops }, viaM: DetoursBetween): boolean {
  for (const { index, departure, needL } of hopsInTurn(side, hops[0], hops, viaM))
    if (needL > bearableL(side, departure, edgeAt(side, at(hops, index).to).atM) + NOISE_L) return false;
  return true;
}
