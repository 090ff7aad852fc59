import { type CarrySide, edgeAt, edgesAfter } from '../side/carry-side.ts';
import { bearableL } from './bearable.ts';
import { hopWith } from './direct-legs.ts';
import type { Hop } from './leg.ts';
import { alongL, filledNeed } from './leg-need.ts';
import { arriveWith, type Departure, refill } from './stock.ts';

/** Hops to every later supply that can be reached. */
export function* hopsFrom(side: CarrySide, from: number, departure: Departure): Generator<Hop> {
  const mostL = bearableL(side, departure, null);
  for (const [to] of edgesAfter(side, from)) {
    if (alongL(side, { from, to }) > mostL + 1) return;
    const hop = hopWith(side, { from, to }, departure);
    if (hop.spareM >= 0) yield hop;
  }
}

/** What a bound supply at a hop's end can be left with: with every number of cans. */
export function* departuresAfter(side: CarrySide, hop: Hop): Generator<Departure> {
  const arrival = arriveWith(side, hop, filledNeed(side, hop, hop.filledL).needL);
  let before = -1;
  for (let wanted = arrival.cans; wanted <= side.mostCans; wanted += 1) {
    const departure = refill(side, edgeAt(side, hop.to), arrival, wanted);
    if (departure.cans === before) return;
    before = departure.cans;
    yield departure;
  }
}
