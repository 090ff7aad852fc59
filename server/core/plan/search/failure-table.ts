import { type FailingStop, failsWith, stopsThatMayFail } from '../failure/failing-stops.ts';
import { type FailingSide, onTheWay, reachesBack, reachesOn } from '../failure/reach.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { edgeAt } from '../side/carry-side.ts';
import { haltsOf } from '../side/halts.ts';
import { otherOf } from '../side/other-of.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import type { SearchLeg, SideTable } from './side-table.ts';

/** A place of a stop that has to be able to fail. */
export interface FailingPlace {
  readonly number: number;
  readonly stop: FailingStop;
  readonly edges: readonly SupplyEdge[];
  /** Of its last supply, metres along. */
  readonly toM: number;
}

/** What legs of one commodity bear when a stop fails; each question is looked into once. */
export interface FailureTable {
  /** The places that come to nothing when their stop fails, of those where a leg ends and the crew finds out. */
  readonly foundBy: (leg: SearchLeg) => readonly FailingPlace[];
  /** Whether its beginning can be regained when its end gives nothing. */
  readonly bearsBack: (leg: SearchLeg) => boolean;
  /** Whether the end of the next leg can be reached when its own gives nothing, and gives something itself. */
  readonly bearsOn: (leg: SearchLeg, next: SearchLeg, place: FailingPlace) => boolean;
  /** Whether a leg has no way back from where the other commodity is sought in vain on it. */
  readonly isCaught: (leg: SearchLeg, halt: SupplyEdge, place: FailingPlace) => boolean;
  /** Whether a leg bears all failures still ahead that another to the same supply bears, once both are `atM` along the route. */
  readonly isAsSafe: (leg: SearchLeg, than: SearchLeg, atM: number) => boolean;
}

/** All places of the stops of a question that have to be able to fail, by supply. */
export type FailingPlaces = ReadonlyMap<SupplyEdge, readonly FailingPlace[]>;

/** Null where no stop has to be able to fail. */
export function failingPlaces(question: CarryQuestion): FailingPlaces | null {
  const { oneFailure: rule } = question;
  if (rule === null) return null;
  const all = stopsThatMayFail(question)
    .filter((_, number) => rule.onlyStop === undefined || rule.onlyStop === number)
    .flatMap((stop) => stop.places.map((edges) => ({ stop, edges })));
  const places = new Map<SupplyEdge, FailingPlace[]>();
  for (const [number, { stop, edges }] of all.entries()) {
    const place = { number, stop, edges, toM: Math.max(...edges.map(({ atM }) => atM)) };
    for (const edge of edges) places.set(edge, [...(places.get(edge) ?? []), place]);
  }
  return places;
}

/** Of one commodity. */
export function failureTable(
  { sides, oneFailure }: CarryQuestion,
  { side, legs }: SideTable,
  places: FailingPlaces,
): FailureTable {
  const foreign = haltsOf(sides[otherOf(side.commodity)], side.course);
  const failing: FailingSide = { side, foreign, spendReserve: oneFailure?.spendReserve === true };
  const others = sides[otherOf(side.commodity)].edges.filter(({ kind }) => kind === 'passing');
  const nextEnds = endsFrom(legs);
  const foundBy = onceFor((leg: SearchLeg) =>
    (places.get(leg.end) ?? []).filter(({ stop }) => !failsWith(stop, leg.start)),
  );
  const bearsBack = onceFor(({ hop }: SearchLeg) => reachesBack(failing, hop, edgeAt(side, hop.to)));
  const reachOf = onceFor(({ hop }: SearchLeg) =>
    onceFor((to: number) => reachesOn(failing, hop, [{ ...hop, to }])),
  );
  /** All ends of next legs that are reached when its own gives nothing. */
  const reachedOf = onceFor((leg: SearchLeg) => (nextEnds.get(leg.hop.to) ?? []).filter(reachOf(leg)));
  /** The halts of the other commodity on its way from which there is no way back. */
  const caughtAt = onceFor(({ start, end, hop }: SearchLeg) =>
    others.filter(
      (halt) => start.atM < halt.atM && end.atM > halt.atM && !reachesBack(failing, hop, onTheWay(halt)),
    ),
  );
  const bearsEnd = (leg: SearchLeg, than: SearchLeg): boolean => {
    const found = foundBy(leg);
    if (found.length === 0) return true;
    const reach = reachOf(leg);
    return (
      found.every((place) => foundBy(than).includes(place)) &&
      (bearsBack(leg) || !bearsBack(than)) &&
      reachedOf(than).every(reach)
    );
  };
  return {
    foundBy,
    bearsBack,
    bearsOn: (leg, { end, hop }, { stop }) => !failsWith(stop, end) && reachOf(leg)(hop.to),
    isCaught: (leg, halt, { edges }) => !edges.includes(leg.end) && caughtAt(leg).includes(halt),
    isAsSafe: (leg, than, atM) =>
      leg === than ||
      (bearsEnd(leg, than) && caughtAt(leg).every((halt) => halt.atM < atM || caughtAt(than).includes(halt))),
  };
}

/** The ends of all legs that begin at an edge, each once. */
function endsFrom(legs: readonly SearchLeg[]): ReadonlyMap<number, readonly number[]> {
  const ends = new Map<number, Set<number>>();
  for (const { hop } of legs) ends.set(hop.from, (ends.get(hop.from) ?? new Set()).add(hop.to));
  return new Map([...ends].map(([from, to]) => [from, [...to]]));
}

/** A question of which each answer is reckoned once. */
function onceFor<K, V>(reckon: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const value = reckon(key);
    known.set(key, value);
    return value;
  };
}
