import { bearableL, spareM } from '../legs/bearable.ts';
import { alongL, filledNeed } from '../legs/leg-need.ts';
import { fullDeparture } from '../legs/stock.ts';
import { type CarrySide, cansAllowed, edgeAt, edgesAfter, endOf } from '../side/carry-side.ts';
import { isBound, type SupplyEdge } from '../side/supply-edge.ts';

/**
 * The supplies of any chain of legs from start to end, each left with as many cans as there may be, halts of the other
 * commodity left out; null where there is none. Supplies that do not give all that is wanted are passed by.
 */
export function anyChain(side: CarrySide): SupplyEdge[] | null {
  const end = endOf(side);
  /** Where each edge that is reached was come to from, by their indexes. */
  const cameFrom = new Map<number, number>();
  for (const from of side.edges.keys()) {
    if (from !== 0 && !cameFrom.has(from)) continue;
    for (const to of reachedFrom(side, from)) if (!cameFrom.has(to)) cameFrom.set(to, from);
  }
  if (!cameFrom.has(end)) return null;
  const chain: SupplyEdge[] = [];
  for (let index = cameFrom.get(end) ?? 0; index > 0; index = cameFrom.get(index) ?? 0)
    chain.unshift(edgeAt(side, index));
  return chain;
}

/** Indexes of the edges to which a leg with as many cans as there may be leads. */
function* reachedFrom(side: CarrySide, from: number): Generator<number> {
  const departure = fullDeparture(side, from, cansAllowed(side, from));
  const mostL = bearableL(side, departure, null);
  for (const [to, edge] of edgesAfter(side, from)) {
    if (alongL(side, { from, to }) > mostL + 1) return;
    if (isBound(edge)) continue;
    const need = filledNeed(side, { from, to }, departure.filledL);
    if (spareM(side, need, bearableL(side, departure, edge.atM)) >= 0) yield to;
  }
}
