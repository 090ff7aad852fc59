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
  /** Whether from a place that gives nothing, come to on a leg, one goes on as far as from another to the same supply. */
  readonly isAsSafeAt: (place: FailingPlace, leg: SearchLeg, than: SearchLeg) => boolean;
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
  const foundBy = onceForLeg((leg) =>
    (places.get(leg.end) ?? []).filter(({ stop }) => !failsWith(stop, leg.start)),
  );
  const bearsBack = onceForLeg(({ hop }) => reachesBack(failing, hop, edgeAt(side, hop.to)));
  const reachOf = onceForLeg(({ hop }) => onceFor((to) => reachesOn(failing, hop, [{ ...hop, to }])));
  /** All ends of next legs that are reached when its own gives nothing. */
  const reachedOf = onceForLeg((leg) => (nextEnds.get(leg.hop.to) ?? []).filter(reachOf(leg)));
  /** The halts of the other commodity on its way from which there is no way back. */
  const caughtAt = onceForLeg(({ start, end, hop }) =>
    others.filter(
      (halt) => start.atM < halt.atM && end.atM > halt.atM && !reachesBack(failing, hop, onTheWay(halt)),
    ),
  );
  const bearsEnd = onceForTwo((leg, than) => {
    const found = foundBy(leg);
    if (found.length === 0) return true;
    return (
      found.every((place) => foundBy(than).includes(place)) &&
      (bearsBack(leg) || !bearsBack(than)) &&
      reachesAsFar(leg, than)
    );
  });
  const reachesAsFar = onceForTwo((leg, than) => reachedOf(than).every(reachOf(leg)));
  const isAsCaught = (leg: SearchLeg, than: SearchLeg, atM: number): boolean => {
    for (const halt of caughtAt(leg)) if (halt.atM >= atM && !caughtAt(than).includes(halt)) return false;
    return true;
  };
  return {
    foundBy,
    bearsBack,
    bearsOn: (leg, { end, hop }, { stop }) => !failsWith(stop, end) && reachOf(leg)(hop.to),
    isCaught: (leg, halt, { edges }) => !edges.includes(leg.end) && caughtAt(leg).includes(halt),
    isAsSafeAt: (place, leg, than) =>
      leg === than ||
      !foundBy(leg).includes(place) ||
      (foundBy(than).includes(place) && reachesAsFar(leg, than)),
    isAsSafe: (leg, than, atM) => leg === than || (bearsEnd(leg, than) && isAsCaught(leg, than, atM)),
  };
}

/** The ends of all legs that begin at an edge, each once. */
function endsFrom(legs: readonly SearchLeg[]): ReadonlyMap<number, readonly number[]> {
  const ends = new Map<number, Set<number>>();
  for (const { hop } of legs) ends.set(hop.from, (ends.get(hop.from) ?? new Set()).add(hop.to));
  return new Map([...ends].map(([from, to]) => [from, [...to]]));
}

/** A question about legs of which each answer is reckoned once. */
function onceForLeg<V>(reckon: (leg: SearchLeg) => V): (leg: SearchLeg) => V {
  const known: V[] = [];
  return (leg) => {
    const before = known[leg.number];
    if (before !== undefined) return before;
    const value = reckon(leg);
    known[leg.number] = value;
    return value;
  };
}

/** The same of two legs to the same supply. */
function onceForTwo(reckon: (leg: SearchLeg, than: SearchLeg) => boolean) {
  const known: Map<number, boolean>[] = [];
  return (leg: SearchLeg, than: SearchLeg): boolean => {
    const ofLeg = known[leg.number] ?? new Map<number, boolean>();
    known[leg.number] = ofLeg;
    const before = ofLeg.get(than.number);
    if (before !== undefined) return before;
    const value = reckon(leg, than);
    ofLeg.set(than.number, value);
    return value;
  };
}

/** A question of which each answer is reckoned once. */
function onceFor<V>(reckon: (key: number) => V): (key: number) => V {
  const known = new Map<number, V>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const value = reckon(key);
    known.set(key, value);
    return value;
  };
}
