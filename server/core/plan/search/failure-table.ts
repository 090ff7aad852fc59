import { type FailingStop, failingStops } from '../failure/failing-stops.ts';
import { type FailingSide, onTheWay, reachesBack, reachesOn } from '../failure/reach.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { edgeAt } from '../side/carry-side.ts';
import { haltsOf } from '../side/halts.ts';
import { otherOf } from '../side/other-of.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import type { SearchLeg, SideTable } from './side-table.ts';

/** What legs of one commodity bear when a stop fails; each question is looked into once. */
export interface FailureTable {
  /** The number of the stop that an edge of either commodity belongs to; null where it is not asked to fail. */
  readonly stopOf: (edge: SupplyEdge) => number | null;
  /** Whether a leg may end at a stop at all: not where it begins at the same. */
  readonly mayEnd: (leg: SearchLeg) => boolean;
  /** Whether its beginning can be regained when its end gives nothing. */
  readonly bearsBack: (leg: SearchLeg) => boolean;
  /** Whether the end of the next leg can be reached when its own gives nothing. */
  readonly bearsOn: (leg: SearchLeg, next: SearchLeg) => boolean;
  /** Whether a leg has no way back from where the other commodity is sought in vain on it. */
  readonly isCaught: (leg: SearchLeg, halt: SupplyEdge) => boolean;
}

/** By commodity; null where no stop has to be able to fail. */
export function failureTable(question: CarryQuestion, { side }: SideTable): FailureTable | null {
  const { sides, oneFailure: rule } = question;
  if (rule === null) return null;
  const stops = new Map<SupplyEdge, [number, FailingStop]>();
  for (const [number, stop] of failingStops(question).entries())
    if (rule.onlyStop === undefined || rule.onlyStop === number)
      for (const edge of stop.edges) stops.set(edge, [number, stop]);
  const foreign = haltsOf(sides[otherOf(side.commodity)], side.course);
  const failing: FailingSide = { side, foreign, spendReserve: rule.spendReserve };
  const isOneStop = (edge: SupplyEdge, other: SupplyEdge) => stops.get(edge)?.[1].edges.has(other) === true;
  const back = new Map<SearchLeg, boolean>();
  const on = new Map<string, boolean>();
  const caught = new Map<SearchLeg, Map<SupplyEdge, boolean>>();
  return {
    stopOf: (edge) => stops.get(edge)?.[0] ?? null,
    mayEnd: ({ start, end }) => !isOneStop(end, start),
    bearsBack: (leg) => once(back, leg, () => reachesBack(failing, leg.hop, edgeAt(side, leg.hop.to))),
    bearsOn: (leg, next) =>
      once(on, `${leg.number} ${next.hop.to}`, () => reachesOn(failing, leg.hop, [next.hop])),
    isCaught: (leg, halt) => {
      const liesOn = leg.start.atM < halt.atM && leg.end.atM > halt.atM && !isOneStop(halt, leg.end);
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
