import type { Evidence } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import { type CarrySide, cansAllowed, endsOf } from '../side/carry-side.ts';
import { fillingM, haltingAt } from '../side/lost-time.ts';
import { isBound } from '../side/supply-edge.ts';
import { canMetres } from './can-metres.ts';
import { legOver } from './direct-legs.ts';
import { departuresAfter, hopsFrom } from './hops.ts';
import { type Hop, type Hops, type Leg, lastHop, weakestEnd } from './leg.ts';
import { type Departure, fullDeparture } from './stock.ts';

/** Ways to one supply that are kept of those with as many cans, the fullest first (ours). */
const MOST_ALIKE = 6;

/** A way to a supply, and what it has cost. */
interface Way {
  readonly hops: Hops;
  /** Metres that it could still go with the reserve. */
  readonly spareM: number;
  /** The most that are full on any of its hops. */
  readonly cans: number;
  readonly costs: Costs;
}

/** Less is better in each. */
interface Costs {
  readonly offM: number;
  /** Time, as metres off the route that take as long. */
  readonly lostM: number;
  readonly canM: number;
  readonly hops: number;
  /** Metres that hang on each weak evidence. */
  readonly weakM: Readonly<Record<WeakEvidence, number>>;
}

type WeakEvidence = Exclude<Evidence, 'confirmed'>;
const WEAK: readonly WeakEvidence[] = ['doubtful', 'implied', 'stated'];
const NOTHING: Costs = { offM: 0, lostM: 0, canM: 0, hops: 0, weakM: { doubtful: 0, implied: 0, stated: 0 } };

/** Ways to each edge, by its index. */
type WaysTo = readonly (readonly Way[])[];

/**
 * The better legs over supplies that do not give all that is wanted, where all would be too many: of ways that begin
 * alike and end at one supply those than which none has more aboard for less driving, cans and weak evidence.
 */
export function betterTours(side: CarrySide): Leg[] {
  const legs: Leg[] = [];
  for (const [from, edge] of side.edges.entries()) {
    if (isBound(edge)) continue;
    for (let cans = 0; cans <= cansAllowed(side, from); cans += 1)
      legs.push(...toursFrom(side, from, fullDeparture(side, from, cans)));
  }
  return legs;
}

/** Those that begin at one edge with so much aboard. */
function toursFrom(side: CarrySide, start: number, departure: Departure): Leg[] {
  const legs: Leg[] = [];
  let ways: WaysTo = side.edges.map(() => []);
  for (const hop of hopsFrom(side, start, departure)) ways = withWay(ways, wayOver(side, hop, null));
  for (const [index, edge] of side.edges.entries()) {
    if (index <= start) continue;
    if (!isBound(edge)) {
      const tours = at(ways, index).filter(({ hops }) => hops.length > 1);
      legs.push(...tours.map(({ hops }) => legOver(side, hops)));
      continue;
    }
    for (const way of at(ways, index))
      for (const on of departuresAfter(side, lastHop(way.hops)))
        for (const hop of hopsFrom(side, index, on)) ways = withWay(ways, wayOver(side, hop, way));
  }
  return legs;
}

function wayOver(side: CarrySide, hop: Hop, before: Way | null): Way {
  return {
    hops: before === null ? [hop] : [...before.hops, hop],
    spareM: hop.spareM,
    cans: Math.max(before?.cans ?? 0, hop.cans),
    costs: costsOf(side, hop, before?.costs ?? NOTHING),
  };
}

/** The ways with one more, where none that is known is as good; those that it is as good as are left out. */
function withWay(ways: WaysTo, way: Way): WaysTo {
  const to = lastHop(way.hops).to;
  const known = at(ways, to);
  if (known.some((other) => isAsGood(other, way))) return ways;
  const kept = [...known.filter((other) => !isAsGood(way, other)), way];
  const alike = kept.filter((other) => other.cans === way.cans);
  const least = alike.reduce((a, b) => (b.spareM < a.spareM ? b : a));
  const better = alike.length <= MOST_ALIKE ? kept : kept.filter((other) => other !== least);
  return ways.with(to, better);
}

/** All costs up to a hop's end. */
function costsOf(side: CarrySide, hop: Hop, before: Costs): Costs {
  const [from, to] = endsOf(side, hop);
  const weakest = weakestEnd(from, to);
  const weak = (evidence: WeakEvidence) =>
    before.weakM[evidence] + (evidence === weakest ? to.atM - from.atM : 0);
  return {
    offM: before.offM + 2 * to.detourM,
    lostM: before.lostM + haltingAt(side, to).lostM + fillingM(side, from, hop.filledL),
    canM: before.canM + canMetres(side, hop),
    hops: before.hops + 1,
    weakM: { doubtful: weak('doubtful'), implied: weak('implied'), stated: weak('stated') },
  };
}

/** Whether a way has as much aboard at its end as another, for no more. */
function isAsGood(way: Way, than: Way): boolean {
  const isNoMore = (mine: number, other: number) => mine <= other + NOISE_M;
  const [mine, other] = [way.costs, than.costs];
  return (
    way.spareM >= than.spareM &&
    isNoMore(way.cans, than.cans) &&
    isNoMore(mine.offM, other.offM) &&
    isNoMore(mine.lostM, other.lostM) &&
    isNoMore(mine.canM, other.canM) &&
    isNoMore(mine.hops, other.hops) &&
    WEAK.every((evidence) => isNoMore(mine.weakM[evidence], other.weakM[evidence]))
  );
}

const NOISE_M = 1e-6;
