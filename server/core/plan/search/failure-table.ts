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
  { side }: SideTable,
  places: FailingPlaces,
): FailureTable {
  const foreign = haltsOf(sides[otherOf(side.commodity)], side.course);
  const failing: FailingSide = { side, foreign, spendReserve: oneFailure?.spendReserve === true };
  const found = new Map<SearchLeg, readonly FailingPlace[]>();
  const back = new Map<SearchLeg, boolean>();
  const on = new Map<SearchLeg, Map<number, boolean>>();
  const caught = new Map<SearchLeg, Map<SupplyEdge, boolean>>();
  return {
    foundBy: (leg) =>
      once(found, leg, () => (places.get(leg.end) ?? []).filter(({ stop }) => !failsWith(stop, leg.start))),
    bearsBack: (leg) => once(back, leg, () => reachesBack(failing, leg.hop, edgeAt(side, leg.hop.to))),
    bearsOn: (leg, next, { stop }) =>
      !failsWith(stop, next.end) &&
      once(
        once(on, leg, () => new Map<number, boolean>()),
        next.hop.to,
        () => reachesOn(failing, leg.hop, [next.hop]),
      ),
    isCaught: (leg, halt, { edges }) => {
      const liesOn = leg.start.atM < halt.atM && leg.end.atM > halt.atM && !edges.includes(leg.end);
      if (!liesOn) return false;
      const ofLeg = once(caught, leg, () => new Map<SupplyEdge, boolean>());
      return once(ofLeg, halt, () => !reachesBack(failing, leg.hop, onTheWay(halt)));
    },
  };
}

function once<K, V>(known: Map<K, V>, key: K, reckon: () => V): V {
  const before = known.get(key);
  if (before !== undefined) return before;
  const value = reckon();
  known.set(key, value);
  return value;
}
