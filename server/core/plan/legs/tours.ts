import { type CarrySide, cansAllowed, edgeAt } from '../side/carry-side.ts';
import { costOf, type Halt, haltsBetween } from '../side/halts.ts';
import { isBound } from '../side/supply-edge.ts';
import { betterTours } from './better-tours.ts';
import { type CanCounts, directLegs, legOver } from './direct-legs.ts';
import { departuresAfter, hopsFrom } from './hops.ts';
import { type DetoursBetween, holdsOver } from './hops-in-turn.ts';
import { type Hops, type Leg, pathOf } from './leg.ts';
import { type Departure, fullDeparture } from './stock.ts';

/** With more legs over supplies that give little than this, or more hops tried, only the better are looked at (ours). */
const MOST_LEGS = 4000;
const MOST_TRIED = 40_000;

export interface LegSearch {
  /** In the order of where they begin. */
  readonly legs: readonly Leg[];
  /** Whether these are all; else only the better ways over supplies that do not give all that is wanted. */
  readonly complete: boolean;
}

/** Every leg that a plan of one commodity may be made of: of one hop (see directLegs), and of several. */
export function allLegs(side: CarrySide, foreign: readonly Halt[], moreCans?: CanCounts): LegSearch {
  const tours = toursOf(side, foreign);
  const legs = [...directLegs(side, foreign, moreCans), ...tours.legs].sort((a, b) => a.from - b.from);
  return { legs, complete: tours.complete };
}

/**
 * Legs over supplies that do not give all that is wanted, with every number of cans for which they may be asked, with
 * the levels that they have where no halt of the other commodity is made on the way.
 */
function toursOf(side: CarrySide, foreign: readonly Halt[]): LegSearch {
  if (!side.edges.some(isBound)) return { legs: [], complete: true };
  const every = everyTour(side, foreign);
  return every === null ? { legs: betterTours(side), complete: false } : { legs: every, complete: true };
}

/** Null where they are too many. */
function everyTour(side: CarrySide, foreign: readonly Halt[]): Leg[] | null {
  const legs: Leg[] = [];
  const search: TourSearch = { side, viaM: detoursOf(side, foreign), tries: 0 };
  for (const [from, edge] of side.edges.entries()) {
    if (isBound(edge)) continue;
    /** Over each path, the cans with which everything is borne: a way with more has no use. */
    const enough = new Map<string, number>();
    for (let cans = 0; cans <= cansAllowed(side, from); cans += 1) {
      for (const leg of toursWith(search, from, cans, enough)) legs.push(leg);
      if (legs.length > MOST_LEGS || search.tries > MOST_TRIED) return null;
    }
  }
  return legs;
}

interface TourSearch {
  readonly side: CarrySide;
  readonly viaM: DetoursBetween;
  /** Hops that were looked at. */
  tries: number;
}

/** Those that begin at an edge with so many cans, but for paths on which fewer are enough. */
function* toursWith(
  search: TourSearch,
  from: number,
  cans: number,
  enough: Map<string, number>,
): Generator<Leg> {
  const { side, viaM } = search;
  for (const hops of chainsFrom(search, from, fullDeparture(side, from, cans), null)) {
    const path = pathOf({ hops });
    if ((enough.get(path) ?? Number.POSITIVE_INFINITY) < cans) continue;
    const leg = legOver(side, hops);
    yield leg;
    const most = Math.max(...hops.map((hop) => hop.cans));
    if (most <= cans && holdsOver(side, leg, viaM)) enough.set(path, cans);
  }
}

/** What all halts between two edges cost, each pair of edges summed once. */
function detoursOf(side: CarrySide, foreign: readonly Halt[]): DetoursBetween {
  const costs = new Map<number, number>();
  return (from, to) => {
    const number = from * side.edges.length + to;
    const cost = costs.get(number) ?? costOf(haltsBetween(foreign, edgeAt(side, from), edgeAt(side, to)));
    costs.set(number, cost);
    return cost;
  };
}

/** Hops over at least one bound supply to one that gives all, from what an edge is left with. */
function* chainsFrom(
  search: TourSearch,
  from: number,
  departure: Departure,
  before: Hops | null,
): Generator<Hops> {
  const { side } = search;
  for (const hop of hopsFrom(side, from, departure)) {
    search.tries += 1;
    if (search.tries > MOST_TRIED) return;
    const hops: Hops = before === null ? [hop] : [...before, hop];
    if (!isBound(edgeAt(side, hop.to))) {
      if (before !== null) yield hops;
      continue;
    }
    for (const on of departuresAfter(side, hop)) yield* chainsFrom(search, hop.to, on, hops);
  }
}
