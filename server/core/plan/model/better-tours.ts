import type { Evidence } from '../../../contract/common.ts';
import { cansAllowed, type Hop, type Leg, weakestEnd } from '../question/leg.ts';
import { canMetres, legOver } from '../question/legs.ts';
import { type CarrySide, isBound } from '../question/problem.ts';
import { type Hops, hopsFrom, type Left, leftFull, waysOnFrom } from './hops.ts';

/** Ways to one supply that are kept of those with as many cans, the fullest first (ours). */
const MOST_ALIKE = 6;

/** A way to a supply, and what it has cost. */
interface Way {
  hops: Hops;
  /** Metres that it could still go with the reserve. */
  spareM: number;
  /** The most that are full on any of its hops. */
  cans: number;
  /** Less is better in each: the cans, metres off the route, can-metres, hops, metres that hang on each weak evidence. */
  costs: readonly number[];
}

const WEAK: readonly Evidence[] = ['doubtful', 'implied', 'stated'];

/**
 * The better legs over supplies that do not give all that is wanted, where all would be too many: of ways that begin
 * alike and end at one supply those than which none has more aboard for less driving, cans and weak evidence.
 */
export function betterTours(side: CarrySide): Leg[] {
  const legs: Leg[] = [];
  for (const [from, edge] of side.edges.entries()) {
    if (isBound(edge)) continue;
    for (let cans = 0; cans <= cansAllowed(side, from); cans += 1) {
      const ways = side.edges.map((): Way[] => []);
      addWays(side, ways, from, leftFull(side, from, cans), null);
      for (let at = from + 1; at < side.edges.length; at += 1) {
        if (isBound(side.edges[at]!)) {
          for (const way of ways[at]!)
            for (const on of waysOnFrom(side, way.hops.at(-1)!)) addWays(side, ways, at, on, way);
        } else
          legs.push(
            ...ways[at]!.filter(({ hops }) => hops.length > 1).map(({ hops }) => legOver(side, hops)),
          );
      }
    }
  }
  return legs;
}

function addWays(side: CarrySide, ways: Way[][], from: number, left: Left, before: Way | null): void {
  for (const hop of hopsFrom(side, from, left)) {
    const hops: Hops = before === null ? [hop] : [before.hops[0], ...before.hops.slice(1), hop];
    const cans = Math.max(before?.cans ?? 0, hop.cans);
    const way = { hops, spareM: hop.spareM, cans, costs: [cans, ...costsOf(side, hop, before)] };
    const there = ways[hop.to]!;
    if (there.some((other) => isAsGood(other, way))) continue;
    const kept = there.filter((other) => !isAsGood(way, other));
    const alike = [...kept, way].filter((other) => other.cans === way.cans);
    const least = alike.reduce((a, b) => (b.spareM < a.spareM ? b : a));
    ways[hop.to] = [...kept, way].filter((other) => alike.length <= MOST_ALIKE || other !== least);
  }
}

/** All costs but the cans, up to a hop's end. */
function costsOf(side: CarrySide, hop: Hop, before: Way | null): number[] {
  const [from, to] = [side.edges[hop.from]!, side.edges[hop.to]!];
  const [_cans, offM = 0, canM = 0, hops = 0, ...weakM] = before?.costs ?? [];
  const weakest = weakestEnd(from, to);
  return [
    offM + 2 * to.detourM,
    canM + canMetres(side, hop),
    hops + 1,
    ...WEAK.map((evidence, index) => (weakM[index] ?? 0) + (evidence === weakest ? to.atM - from.atM : 0)),
  ];
}

/** Whether a way has as much aboard at its end as another, for no more. */
function isAsGood(way: Way, than: Way): boolean {
  return way.spareM >= than.spareM && way.costs.every((cost, index) => cost <= than.costs[index]! + NOISE_M);
}

const NOISE_M = 1e-6;
