import { arriveWith, leaveBound } from '../question/bound-stop.ts';
import {
  bearableL,
  cansAllowed,
  type Hop,
  type Leg,
  legNeed,
  withDetours,
  withFilling,
} from '../question/leg.ts';
import { legOver, legsOf, type MoreCans } from '../question/legs.ts';
import {
  type CarrySide,
  costOf,
  type Halt,
  haltsBetween,
  isBound,
  placeKey,
  type SupplyEdge,
} from '../question/problem.ts';
import { betterTours } from './better-tours.ts';
import { type Hops, hopsFrom, type Left, leftFull, waysOnFrom } from './hops.ts';

/** With more legs over supplies that give little than this, or more hops tried, only the better are looked at (ours). */
const MOST_LEGS = 4000;
const MOST_TRIED = 40_000;

export interface Legs {
  /** In the order of where they begin. */
  legs: Leg[];
  /** Whether these are all; else only the better ways over supplies that do not give all that is wanted. */
  complete: boolean;
}

/** Every leg that a plan of one commodity may be made of: of one hop (see legsOf), and of several. */
export function allLegs(side: CarrySide, foreign: readonly Halt[], moreCans?: MoreCans): Legs {
  const tours = toursOf(side, foreign);
  const legs = [...legsOf(side, foreign, moreCans), ...tours.legs].sort((a, b) => a.from - b.from);
  return { legs, complete: tours.complete };
}

/**
 * Legs over supplies that do not give all that is wanted, with every number of cans for which they may be asked, with
 * the levels that they have where no halt of the other commodity is made on the way.
 */
function toursOf(side: CarrySide, foreign: readonly Halt[]): Legs {
  if (!side.edges.some(isBound)) return { legs: [], complete: true };
  const every = everyTour(side, foreign);
  return every === null ? { legs: betterTours(side), complete: false } : { legs: every, complete: true };
}

/** Null where they are too many. */
function everyTour(side: CarrySide, foreign: readonly Halt[]): Leg[] | null {
  const legs: Leg[] = [];
  const search = { side, tried: 0 };
  const costs = new Map<string, number>();
  const costOn = (from: SupplyEdge, to: SupplyEdge): number => {
    const key = `${placeKey(from)} ${placeKey(to)}`;
    const cost = costs.get(key) ?? costOf(haltsBetween(foreign, from, to));
    costs.set(key, cost);
    return cost;
  };
  for (const [from, edge] of side.edges.entries()) {
    if (isBound(edge)) continue;
    // All ways over the same supplies: a way with more cans than one that bears everything has no use.
    const enough = new Map<string, number>();
    for (let cans = 0; cans <= cansAllowed(side, from); cans += 1) {
      for (const hops of chainsFrom(search, from, leftFull(side, from, cans), [])) {
        const path = hops.map(({ to }) => to).join(' ');
        if ((enough.get(path) ?? Number.POSITIVE_INFINITY) < cans) continue;
        const leg = legOver(side, hops);
        legs.push(leg);
        const most = Math.max(...hops.map((hop) => hop.cans));
        if (most <= cans && holdsOver(side, leg, costOn)) enough.set(path, cans);
      }
      if (legs.length > MOST_LEGS || search.tried > MOST_TRIED) return null;
    }
  }
  return legs;
}

/** Hops over at least one bound supply to one that gives all, from what an edge is left with. */
function* chainsFrom(
  search: { side: CarrySide; tried: number },
  from: number,
  left: Left,
  before: readonly Hop[],
): Generator<Hops> {
  const { side } = search;
  for (const hop of hopsFrom(side, from, left)) {
    search.tried += 1;
    if (search.tried > MOST_TRIED) return;
    const [first, ...more] = [...before, hop];
    const hops: Hops = [first!, ...more];
    if (!isBound(side.edges[hop.to]!)) {
      if (before.length > 0) yield hops;
      continue;
    }
    for (const on of waysOnFrom(side, hop)) yield* chainsFrom(search, hop.to, on, hops);
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
