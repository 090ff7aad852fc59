import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { type FailingStop, failsWith, stopsThatMayFail } from '../failure/failing-stops.ts';
import { type FailingSide, onTheWay, reachesBack, reachesOn } from '../failure/reach.ts';
import { hopsInTurn } from '../legs/hops-in-turn.ts';
import type { Hop, Leg } from '../legs/leg.ts';
import type { CarryQuestion, FailureRule } from '../question/carry-question.ts';
import { type CarrySide, edgeAt, endsOf } from '../side/carry-side.ts';
import { costOf, type Halt, haltsBetween } from '../side/halts.ts';
import { otherOf } from '../side/other-of.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import { entriesOf, type LegColumn, type LegColumns } from './columns.ts';
import type { MipBuilder, MipEntry } from './mip.ts';

interface FailureFacts {
  readonly question: CarryQuestion;
  readonly rule: FailureRule;
  /** By the commodity that bears them: halts of the other. */
  readonly foreign: Readonly<Record<Commodity, readonly Halt[]>>;
  readonly legs: LegColumns;
}

/** A place of a stop that fails, and the column that says which way is gone from there: on where it is 1. */
interface PlaceColumn {
  readonly stop: FailingStop;
  readonly place: readonly SupplyEdge[];
  readonly on: number;
}

/**
 * Rows that let every stop fail, one at a time, wherever it is passed: at each of its places there is one way to go, on or
 * back, that both commodities bear. On is to a supply of another stop, back to the supply before; a leg of the other
 * commodity that the place lies on bears the way back from there as well.
 */
export function addFailureRows(builder: MipBuilder, facts: FailureFacts): void {
  const { question, rule } = facts;
  for (const [number, stop] of stopsThatMayFail(question).entries()) {
    if (rule.onlyStop !== undefined && rule.onlyStop !== number) continue;
    for (const place of stop.places) {
      // Whole legs leave it no choice but on or back: no need to ask for whole numbers.
      const on = builder.column(0, 1, false);
      for (const commodity of COMMODITIES) {
        addOwnRows(builder, facts, commodity, { stop, place, on });
        addOtherRows(builder, facts, commodity, { stop, place, on });
      }
    }
  }
}

const failingSide = ({ question, rule, foreign }: FailureFacts, commodity: Commodity): FailingSide => ({
  side: question.sides[commodity],
  foreign: foreign[commodity],
  spendReserve: rule.spendReserve,
});

/** Legs that end at a place of the stop, or go on over it, with nothing to be had there. */
function addOwnRows(
  builder: MipBuilder,
  facts: FailureFacts,
  commodity: Commodity,
  { stop, place, on }: PlaceColumn,
): void {
  const failing = failingSide(facts, commodity);
  const { side } = failing;
  const legs = facts.legs[commodity];
  const elsewhere = ({ to }: Hop) => !failsWith(stop, edgeAt(side, to));
  for (const edge of place) {
    const index = side.edges.indexOf(edge);
    if (index < 0) continue;
    const next = legs.filter(({ leg }) => leg.from === index && leg.hops.every(elsewhere));
    const calls = legs
      .filter(({ leg }) => findsOut(side, leg, index, stop))
      .map((leg) => callAt(failing, leg, { stop, edge, index, next }));
    addCallRows(builder, calls, on);
  }
}

/**
 * Whether a leg calls at a supply of the stop and comes from elsewhere. Where it comes from the stop itself, the crew has
 * found out before: there it went back, or on to another stop.
 */
function findsOut(side: CarrySide, leg: Leg, index: number, stop: FailingStop): boolean {
  const hop = leg.hops.find(({ to }) => to === index);
  return hop !== undefined && !failsWith(stop, edgeAt(side, hop.from));
}

/** A leg that calls at a stop which gives nothing: what it bears then. */
interface Call {
  readonly column: number;
  readonly bearsBack: boolean;
  /** Whether it bears going on; where it ends there, the columns of the legs whose own end it still reaches. */
  readonly bearsOn: boolean | ReadonlySet<number>;
}

interface CallFacts {
  readonly stop: FailingStop;
  readonly edge: SupplyEdge;
  /** Of the edge. */
  readonly index: number;
  /** Legs that begin there and call at no other place of the stop. */
  readonly next: readonly LegColumn[];
}

function callAt(
  failing: FailingSide,
  { leg, column }: LegColumn,
  { stop, edge, index, next }: CallFacts,
): Call {
  const { side } = failing;
  const number = leg.hops.findIndex(({ to }) => to === index);
  const hop = atWorst(failing, leg)[number];
  // With every halt made it does not come so far: it may be chosen, but not relied on.
  if (hop === undefined) return { column, bearsBack: false, bearsOn: false };
  const rest = leg.hops.slice(number + 1);
  const failsAgain = rest.some(({ to }) => failsWith(stop, edgeAt(side, to)));
  return {
    column,
    bearsBack: reachesBack(failing, hop, edge),
    bearsOn: rest.length > 0 ? !failsAgain && reachesOn(failing, hop, rest) : reachedFrom(failing, hop, next),
  };
}

function addCallRows(builder: MipBuilder, calls: readonly Call[], on: number): void {
  const one = ({ column }: Call): MipEntry => [column, 1];
  // Of all legs to a supply one is chosen at the most, so what holds for each holds for their sum.
  const noWayBack = calls.filter(({ bearsBack }) => !bearsBack);
  if (noWayBack.length > 0) builder.atMost(0, [...noWayBack.map(one), [on, -1]]);
  const noWayOn = calls.filter(({ bearsOn }) => bearsOn === false);
  if (noWayOn.length > 0) builder.atMost(1, [...noWayOn.map(one), [on, 1]]);
  const groups = alikeInReach(calls);
  for (const { reached } of groups) {
    const within = groups.filter((other) => [...other.reached].every((column) => reached.has(column)));
    builder.atMost(1, [
      ...within.flatMap(({ columns }) => columns.map((column): MipEntry => [column, 1])),
      [on, 1],
      ...[...reached].map((column): MipEntry => [column, -1]),
    ]);
  }
}

interface ReachGroup {
  readonly columns: readonly number[];
  readonly reached: ReadonlySet<number>;
}

/** Legs that end at the stop, by where they still reach. */
function alikeInReach(calls: readonly Call[]): ReachGroup[] {
  const groups = new Map<string, ReachGroup>();
  for (const { column, bearsOn } of calls) {
    if (typeof bearsOn === 'boolean') continue;
    const name = [...bearsOn].join(' ');
    const group = groups.get(name) ?? { columns: [], reached: bearsOn };
    groups.set(name, { ...group, columns: [...group.columns, column] });
  }
  return [...groups.values()];
}

/** The hops of a leg with what each is left with were every halt of the other commodity made; no more than it reaches. */
function atWorst({ side, foreign }: FailingSide, { hops }: Leg): readonly Hop[] {
  if (hops.length === 1) return hops;
  const viaM = (from: number, to: number) => costOf(haltsBetween(foreign, ...endsOf(side, { from, to })));
  const worst: Hop[] = [];
  for (const { index, departure, needL } of hopsInTurn(side, hops[0], hops, viaM)) {
    worst.push({ ...at(hops, index), ...departure });
    if (needL > departure.tankL + departure.cans * side.canL) break;
  }
  return worst;
}

/** Columns of the legs from a hop's end whose own end it still reaches, having sought in vain there. */
function reachedFrom(failing: FailingSide, hop: Hop, next: readonly LegColumn[]): ReadonlySet<number> {
  const known = new Map<string, boolean>();
  const reached = next.filter(({ leg }) => {
    // Over a single hop only where it leads matters.
    const way = leg.hops.map(({ to, cans }) => (leg.hops.length === 1 ? to : `${to} ${cans}`)).join();
    const reaches = known.get(way) ?? reachesOn(failing, hop, leg.hops);
    known.set(way, reaches);
    return reaches;
  });
  return new Set(reached.map(({ column }) => column));
}

/** Legs of this commodity on which a stop lies where the other is sought in vain: going back, they bear that. */
function addOtherRows(
  builder: MipBuilder,
  facts: FailureFacts,
  commodity: Commodity,
  { stop, place, on }: PlaceColumn,
): void {
  const failing = failingSide(facts, commodity);
  const otherSide = facts.question.sides[otherOf(commodity)];
  for (const edge of place) {
    const index = otherSide.edges.indexOf(edge);
    if (index < 0) continue;
    const into = facts.legs[otherSide.commodity].filter(({ leg }) => findsOut(otherSide, leg, index, stop));
    if (into.length === 0) continue;
    const caught = facts.legs[commodity].filter(({ leg }) => isCaught(failing, leg, edge, place));
    if (caught.length === 0) continue;
    // Both legs are chosen only where the way is on.
    builder.atMost(1, [...entriesOf(caught, 1), ...entriesOf(into, 1), [on, -1]]);
  }
}

/** Whether a supply of the other commodity lies on a leg from where it does not bear the way back. */
function isCaught(failing: FailingSide, leg: Leg, edge: SupplyEdge, place: readonly SupplyEdge[]): boolean {
  const there = onTheWay(edge);
  return leg.hops.some((hop, index) => {
    if (!liesOn(failing.side, hop, edge, place)) return false;
    const worst = atWorst(failing, leg)[index];
    return worst === undefined || !reachesBack(failing, worst, there);
  });
}

function liesOn(side: CarrySide, hop: Hop, edge: SupplyEdge, place: readonly SupplyEdge[]): boolean {
  const [from, to] = endsOf(side, hop);
  return from.atM < edge.atM && to.atM > edge.atM && !place.includes(to);
}
