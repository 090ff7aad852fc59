import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { type FailingStop, failingStops } from '../failure/failing-stops.ts';
import { onTheWay, reachesBack, reachesOn } from '../failure/failure.ts';
import { arriveWith, leaveBound } from '../question/bound-stop.ts';
import { type Hop, type Leg, legNeed, tanksL, withDetours, withFilling } from '../question/leg.ts';
import { alongL, type MoreCans } from '../question/legs.ts';
import {
  type CarryProblem,
  type CarrySide,
  costOf,
  type FailureRule,
  type Halt,
  haltsBetween,
  otherOf,
} from '../question/problem.ts';
import type { MipBuilder } from './mip.ts';

type Legs = Record<Commodity, readonly { leg: Leg; column: number }[]>;
type Entry = [column: number, value: number];

/**
 * Rows that let every stop fail, one at a time: for each there is one way to go, on or back, that both commodities bear.
 * Back is to the supply before; a leg of the other commodity that the stop lies on bears the way back from there as well.
 */
export function addFailureRows(
  builder: MipBuilder,
  problem: CarryProblem,
  rule: FailureRule,
  halts: Record<Commodity, readonly Halt[]>,
  legs: Legs,
): void {
  failingStops(problem).forEach((stop, number) => {
    if (rule.onlyStop !== undefined && rule.onlyStop !== number) return;
    // Whole legs leave it no choice but on or back: no need to ask for whole numbers.
    const on = builder.column(0, 1, false);
    for (const commodity of COMMODITIES) {
      addOwnRows(builder, problem, commodity, rule, halts[otherOf(commodity)], legs[commodity], stop, on);
      addOtherRows(builder, problem, commodity, rule, halts[otherOf(commodity)], legs, stop, on);
    }
  });
}

/** Legs that end at the stop, or go on over it, with nothing to be had there. */
function addOwnRows(
  builder: MipBuilder,
  { sides }: CarryProblem,
  commodity: Commodity,
  { spendReserve }: FailureRule,
  foreign: readonly Halt[],
  legs: Legs[Commodity],
  stop: FailingStop,
  on: number,
): void {
  const side = sides[commodity];
  for (const edge of stop.edges) {
    const index = side.edges.indexOf(edge);
    if (index < 0) continue;
    const next = legs.filter(({ leg }) => leg.from === index);
    const noWayBack: Entry[] = [];
    const noWayOn: Entry[] = [];
    /** Legs that end here, by where they still reach: the columns of legs from here. */
    const reaching = new Map<string, { columns: number[]; reached: ReadonlySet<number> }>();
    for (const { leg, column } of legs) {
      const at = leg.hops.findIndex(({ to }) => to === index);
      if (at < 0) continue;
      const hop = atWorst(side, leg, foreign)[at];
      if (hop === undefined) {
        // With every halt made it does not come so far: it may be chosen, but not relied on.
        noWayBack.push([column, 1]);
        noWayOn.push([column, 1]);
        continue;
      }
      // From one supply of the stop to another of it: both fail.
      const both = stop.edges.has(side.edges[hop.from]!);
      const back = !both && reachesBack(side, hop, edge, foreign, spendReserve);
      if (!back) noWayBack.push([column, 1]);
      const rest = leg.hops.slice(at + 1);
      if (both || (rest.length > 0 && !reachesOn(side, hop, rest, foreign, spendReserve)))
        noWayOn.push([column, 1]);
      if (both || rest.length > 0) continue;
      const reached = reachedFrom(side, hop, next, foreign, spendReserve);
      const key = [...reached].join(' ');
      const alike = reaching.get(key) ?? { columns: [], reached };
      alike.columns.push(column);
      reaching.set(key, alike);
    }
    // Of all legs to a supply one is chosen at the most, so what holds for each holds for their sum.
    if (noWayBack.length > 0) builder.row(Number.NEGATIVE_INFINITY, 0, [...noWayBack, [on, -1]]);
    if (noWayOn.length > 0) builder.row(Number.NEGATIVE_INFINITY, 1, [...noWayOn, [on, 1]]);
    const groups = [...reaching.values()];
    for (const { reached } of groups) {
      const within = groups.filter((other) => [...other.reached].every((column) => reached.has(column)));
      builder.row(Number.NEGATIVE_INFINITY, 1, [
        ...within.flatMap(({ columns }) => columns.map((column): Entry => [column, 1])),
        [on, 1],
        ...[...reached].map((column): Entry => [column, -1]),
      ]);
    }
  }
}

/** The hops of a leg with what each is left with were every halt of the other commodity made; no more than it reaches. */
function atWorst(side: CarrySide, leg: Leg, foreign: readonly Halt[]): readonly Hop[] {
  if (leg.hops.length === 1) return leg.hops;
  let left: Pick<Hop, 'tankL' | 'cans' | 'filledL'> = leg.hops[0];
  const worst: Hop[] = [];
  for (const [index, hop] of leg.hops.entries()) {
    worst.push({ ...hop, ...left });
    const next = leg.hops[index + 1];
    if (next === undefined) break;
    const { from, to } = hop;
    const viaM = costOf(haltsBetween(foreign, side.edges[from]!, side.edges[to]!));
    const filling = withFilling(side, legNeed(side, from, to), from, left.filledL);
    const { needL } = withDetours(side, filling, viaM);
    if (needL > left.tankL + left.cans * side.canL) break;
    left = leaveBound(side, side.edges[to]!, arriveWith(side, left, needL), next.cans);
  }
  return worst;
}

/** Columns of the legs from a hop's end whose own end it still reaches, having sought in vain there. */
function reachedFrom(
  side: CarrySide,
  hop: Hop,
  next: Legs[Commodity],
  foreign: readonly Halt[],
  spendReserve: boolean,
): ReadonlySet<number> {
  const known = new Map<string, boolean>();
  return new Set(
    next
      .filter(({ leg }) => {
        // Over a single hop only where it leads matters.
        const key = leg.hops.map(({ to, cans }) => (leg.hops.length === 1 ? to : `${to} ${cans}`)).join();
        const reaches = known.get(key) ?? reachesOn(side, hop, leg.hops, foreign, spendReserve);
        known.set(key, reaches);
        return reaches;
      })
      .map(({ column }) => column),
  );
}

/**
 * Numbers of full cans that are worth having against a failure, beyond the fewest: with each of them more is reached, on
 * or back, than with one can less.
 */
export function cansAgainstFailure(
  { sides }: CarryProblem,
  commodity: Commodity,
  { spendReserve }: FailureRule,
  foreign: readonly Halt[],
): MoreCans {
  const side = sides[commodity];
  const places = sides[otherOf(commodity)].edges.filter(({ kind }) => kind === 'passing');
  return (from, to, fewest) => {
    const tankL = tanksL(side, from);
    const [leaves, ends] = [side.edges[from]!, side.edges[to]!];
    const between = places.filter(({ atM }) => atM > leaves.atM && atM < ends.atM).map(onTheWay);
    const reach = (cans: number): string => {
      const hop = { from, to, tankL, cans, filledL: tankL + cans * side.canL, spareM: 0 };
      const reached: number[] = [];
      for (let next = to + 1; next < side.edges.length; next += 1) {
        if (alongL(side, from, next) > hop.filledL) break;
        if (reachesOn(side, hop, [{ ...hop, to: next }], foreign, spendReserve)) reached.push(next);
      }
      const back = [ends, ...between].map((place) => reachesBack(side, hop, place, foreign, spendReserve));
      return `${reached} ${back}`;
    };
    const counts: number[] = [];
    let before = reach(fewest);
    for (let cans = fewest + 1; cans <= side.mostCans; cans += 1) {
      const reached = reach(cans);
      if (reached !== before) counts.push(cans);
      before = reached;
    }
    return counts;
  };
}

/** Legs of this commodity on which a stop lies where the other is sought in vain: going back, they bear that. */
function addOtherRows(
  builder: MipBuilder,
  { sides }: CarryProblem,
  commodity: Commodity,
  { spendReserve }: FailureRule,
  foreign: readonly Halt[],
  legs: Legs,
  stop: FailingStop,
  on: number,
): void {
  const side = sides[commodity];
  const other = otherOf(commodity);
  for (const edge of stop.edges) {
    const index = sides[other].edges.indexOf(edge);
    if (index < 0) continue;
    const into = legs[other].filter(({ leg }) => leg.hops.some(({ to }) => to === index));
    if (into.length === 0) continue;
    const place = onTheWay(edge);
    const isOn = ({ from, to }: Hop) =>
      side.edges[from]!.atM < edge.atM && side.edges[to]!.atM > edge.atM && !stop.edges.has(side.edges[to]!);
    const caught = legs[commodity].filter(({ leg }) =>
      leg.hops.some((hop, index) => {
        if (!isOn(hop)) return false;
        const worst = atWorst(side, leg, foreign)[index];
        return worst === undefined || !reachesBack(side, worst, place, foreign, spendReserve);
      }),
    );
    if (caught.length === 0) continue;
    // Both legs are chosen only where the way is on.
    builder.row(Number.NEGATIVE_INFINITY, 1, [
      ...caught.map(({ column }): Entry => [column, 1]),
      ...into.map(({ column }): Entry => [column, 1]),
      [on, -1],
    ]);
  }
}
