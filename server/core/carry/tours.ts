import { arriveWith, leaveBound } from './bound-stop.ts';
import {
  bearableL,
  cansAllowed,
  type Hop,
  type Leg,
  legNeed,
  tanksL,
  withDetours,
  withFilling,
} from './leg.ts';
import { alongL, hopWith, legOver, legsOf, type MoreCans } from './legs.ts';
import { type CarrySide, costOf, type Halt, haltsBetween, isBound, type SupplyEdge } from './problem.ts';

/** No more supplies one after the other that do not give all that is wanted (ours). */
export const MOST_IN_A_ROW = 6;
/** With more legs than this, fewer of them one after the other are looked at (ours). */
const MOST_LEGS = 4000;

type Hops = [Hop, ...Hop[]];

/** Every leg that a plan of one commodity may be made of, in the order of where they begin; see legsOf and toursOf. */
export const allLegs = (side: CarrySide, foreign: readonly Halt[], moreCans?: MoreCans): Leg[] =>
  [...legsOf(side, foreign, moreCans), ...toursOf(side, foreign)].sort((a, b) => a.from - b.from);

/**
 * Every leg over supplies that do not give all that is wanted, with every number of cans for which it may be asked, with
 * the levels that it has where no halt of the other commodity is made on the way.
 */
function toursOf(side: CarrySide, foreign: readonly Halt[]): Leg[] {
  if (!side.edges.some(isBound)) return [];
  for (let inARow = MOST_IN_A_ROW; ; inARow -= 1) {
    const legs = toursWith(side, foreign, inARow);
    if (legs !== null) return legs;
  }
}

/** Null where they are too many; with one at a time they never are. */
function toursWith(side: CarrySide, foreign: readonly Halt[], inARow: number): Leg[] | null {
  const legs: Leg[] = [];
  for (const [from, edge] of side.edges.entries()) {
    if (isBound(edge)) continue;
    // All ways over the same supplies: a way with more cans than one that bears everything has no use.
    const enough = new Map<string, number>();
    const tankL = tanksL(side, from);
    for (let cans = 0; cans <= cansAllowed(side, from); cans += 1) {
      const left = { tankL, cans, filledL: tankL + cans * side.canL };
      for (const hops of chainsFrom(side, from, left, [], inARow)) {
        const path = hops.map(({ to }) => to).join(' ');
        if ((enough.get(path) ?? Number.POSITIVE_INFINITY) < cans) continue;
        const leg = legOver(side, hops);
        legs.push(leg);
        const most = Math.max(...hops.map((hop) => hop.cans));
        if (most <= cans && holdsWith(side, leg, foreign)) enough.set(path, cans);
        if (legs.length > MOST_LEGS && inARow > 1) return null;
      }
    }
  }
  return legs;
}

/** Hops over at least one bound supply to one that gives all, from what an edge is left with. */
function* chainsFrom(
  side: CarrySide,
  from: number,
  left: Pick<Hop, 'tankL' | 'cans' | 'filledL'>,
  before: Hop[],
  inARow: number,
): Generator<Hops> {
  const mostL = bearableL(side, left.tankL, left.cans);
  for (let to = from + 1; to < side.edges.length; to += 1) {
    if (alongL(side, from, to) > mostL + 1) return;
    const edge = side.edges[to]!;
    if (isBound(edge) ? before.length >= inARow : before.length === 0) continue;
    const hop = hopWith(side, from, to, left);
    if (hop.spareM < 0) continue;
    const hops: Hops = [before[0] ?? hop, ...(before.length === 0 ? [] : [...before.slice(1), hop])];
    if (!isBound(edge)) {
      yield hops;
      continue;
    }
    const need = withFilling(side, legNeed(side, from, to), from, left.filledL);
    const arrived = arriveWith(side, left, need.needL);
    let leftWith = -1;
    for (let wanted = arrived.cans; wanted <= side.mostCans; wanted += 1) {
      const on = leaveBound(side, edge, arrived, wanted);
      if (on.cans === leftWith) break;
      leftWith = on.cans;
      yield* chainsFrom(side, to, on, hops, inARow);
    }
  }
}

/** Whether a leg keeps its reserves when so many metres of detours come on each hop; exact, fills in between included. */
export function holdsOver(
  side: CarrySide,
  { hops }: Leg,
  viaM: (from: SupplyEdge, to: SupplyEdge) => number,
): boolean {
  let left: Pick<Hop, 'tankL' | 'cans' | 'filledL'> = hops[0];
  return hops.every(({ from, to }, index) => {
    const need = withDetours(
      side,
      withFilling(side, legNeed(side, from, to), from, left.filledL),
      viaM(side.edges[from]!, side.edges[to]!),
    );
    if (need.needL > bearableL(side, left.tankL, left.cans) + NOISE_L) return false;
    const next = hops[index + 1];
    if (next !== undefined)
      left = leaveBound(side, side.edges[to]!, arriveWith(side, left, need.needL), next.cans);
    return true;
  });
}

/** A litre this small is float noise. */
const NOISE_L = 1e-7;

const holdsWith = (side: CarrySide, leg: Leg, foreign: readonly Halt[]): boolean =>
  holdsOver(side, leg, (from, to) => costOf(haltsBetween(foreign, from, to)));
