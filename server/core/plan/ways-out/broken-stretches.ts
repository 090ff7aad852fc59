import { reckon } from '../../gaps/reckon.ts';
import { bearableL, fewestCans } from '../legs/bearable.ts';
import { alongL, leaving } from '../legs/leg-need.ts';
import { fullDeparture } from '../legs/stock.ts';
import { allLegs } from '../legs/tours.ts';
import { type CarrySide, cansAllowed, edgeAt, edgesAfter, endOf } from '../side/carry-side.ts';
import { isBound } from '../side/supply-edge.ts';

/** Indexes of the side's edges, and what is missing between them with as many cans as there may be. */
export interface BrokenStretch {
  readonly from: number;
  readonly to: number;
  readonly missingL: number;
}

/**
 * The stretches of a side that no chain of legs gets over, in route order: after each it is gone on from its end as if
 * supplied there. Empty where a chain leads from start to end.
 */
export function brokenStretches(side: CarrySide): BrokenStretch[] {
  const reachedFrom = side.edges.some(isBound) ? byAllLegs(side) : (begin: number) => byOneHop(side, begin);
  const broken: BrokenStretch[] = [];
  for (let begin = 0; ; ) {
    const reached = reachedFrom(begin);
    if (reached.has(endOf(side))) return broken;
    const stretch = leastMissing(side, reached);
    broken.push(stretch);
    begin = stretch.to;
  }
}

/** The edges that chains of legs lead to from one. */
type ReachedFrom = (begin: number) => ReadonlySet<number>;

function byAllLegs(side: CarrySide): ReachedFrom {
  const { legs } = allLegs(side, []);
  return (begin) => {
    const reached = new Set([begin]);
    // They come in the order of where they begin.
    for (const leg of legs) if (reached.has(leg.from)) reached.add(leg.to);
    return reached;
  };
}

/** Where every supply gives all that is wanted: an edge that is reached is not asked for again. */
function byOneHop(side: CarrySide, begin: number): ReadonlySet<number> {
  const reached = new Set([begin]);
  // What is added meanwhile is looked at as well, in route order or not.
  for (const from of reached) {
    const mostL = bearableL(side, fullDeparture(side, from, cansAllowed(side, from)), null);
    for (const [to] of edgesAfter(side, from)) {
      if (alongL(side, { from, to }) > mostL + 1) break;
      if (!reached.has(to) && fewestCans(side, { from, to, viaM: 0 }) !== null) reached.add(to);
    }
  }
  return reached;
}

/** From one of the edges that are reached to a later one that is not and gives all that is wanted. */
function leastMissing(side: CarrySide, reached: ReadonlySet<number>): BrokenStretch {
  let least: BrokenStretch = { from: 0, to: endOf(side), missingL: Number.POSITIVE_INFINITY };
  for (const from of reached) {
    for (const [to, edge] of edgesAfter(side, from)) {
      if (reached.has(to) || isBound(edge)) continue;
      const missingL = missingBetween(side, from, to);
      if (missingL < least.missingL) least = { from, to, missingL };
    }
  }
  return least;
}

/** Litres that are missing with as many cans as there may be. */
function missingBetween(side: CarrySide, from: number, to: number): number {
  const { tankL, cans, filledL } = fullDeparture(side, from, cansAllowed(side, from));
  // As a leg is: with the time that filling takes, and no drinking water in cans kept for washing.
  const start = leaving(edgeAt(side, from), filledL);
  const washingCansL = side.cansDrinkable ? 0 : cans * side.canL;
  const departL = tankL + cans * side.canL;
  const { marginL, grades } = reckon(side.course, start, edgeAt(side, to), { departL, washingCansL });
  return -Math.min(marginL, grades?.drinking.marginL ?? marginL);
}
