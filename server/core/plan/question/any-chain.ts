import { bearableL, cansAllowed, legNeed, spareM, tanksL, withFilling } from './leg.ts';
import { alongL } from './legs.ts';
import { type CarrySide, isBound, type SupplyEdge } from './problem.ts';

/**
 * The supplies of any chain of legs from start to end, each left with as many cans as there may be, halts of the other
 * commodity left out; null where there is none. Supplies that do not give all that is wanted are passed by.
 */
export function anyChain(side: CarrySide): SupplyEdge[] | null {
  const { edges, canL } = side;
  const last = edges.length - 1;
  const cameFrom = new Map<number, number>([[0, -1]]);
  for (let from = 0; from < last; from += 1) {
    if (!cameFrom.has(from)) continue;
    const tankL = tanksL(side, from);
    const cans = cansAllowed(side, from);
    const mostL = bearableL(side, tankL, cans);
    for (let to = from + 1; to <= last; to += 1) {
      if (alongL(side, from, to) > mostL + 1) break;
      if (cameFrom.has(to) || isBound(edges[to]!)) continue;
      const need = withFilling(side, legNeed(side, from, to), from, tankL + cans * canL);
      if (spareM(side, need, mostL) >= 0) cameFrom.set(to, from);
    }
  }
  if (!cameFrom.has(last)) return null;
  const chain: SupplyEdge[] = [];
  for (let index = cameFrom.get(last)!; index > 0; index = cameFrom.get(index)!) chain.unshift(edges[index]!);
  return chain;
}
