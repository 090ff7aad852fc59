import type { Commodity } from '../../contract/common.ts';
import { type FailingStop, failingStops } from './failing-stops.ts';
import { onTheWay, reachesBack, reachesOn } from './failure.ts';
import type { Hop, Leg } from './leg.ts';
import type { MipBuilder } from './mip.ts';
import { type CarryProblem, COMMODITIES, type FailureRule, type Halt, otherOf } from './problem.ts';

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
    const on = builder.column(0, 1, true);
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
  for (const { leg, column } of legs) {
    leg.hops.forEach((hop, index) => {
      const edge = side.edges[hop.to]!;
      if (!stop.edges.has(edge)) return;
      // From one supply of the stop to another of it: both fail.
      if (stop.edges.has(side.edges[hop.from]!)) {
        builder.row(0, 0, [[column, 1]]);
        return;
      }
      // Back where on is not chosen.
      if (!reachesBack(side, hop, edge, foreign, spendReserve))
        builder.row(0, 1, [
          [on, 1],
          [column, -1],
        ]);
      const rest = leg.hops.slice(index + 1);
      if (rest.length > 0) {
        if (!reachesOn(side, hop, rest, foreign, spendReserve)) {
          builder.row(Number.NEGATIVE_INFINITY, 1, [
            [on, 1],
            [column, 1],
          ]);
        }
        return;
      }
      const known = new Map<string, boolean>();
      const next = legs.filter(({ leg: other }) => {
        if (other.from !== hop.to) return false;
        // Over single hops only where it leads matters.
        const key = other.hops.map(({ to, cans }) => (other.hops.length === 1 ? to : `${to} ${cans}`)).join();
        const reaches = known.get(key) ?? reachesOn(side, hop, other.hops, foreign, spendReserve);
        known.set(key, reaches);
        return reaches;
      });
      builder.row(Number.NEGATIVE_INFINITY, 1, [
        [column, 1],
        [on, 1],
        ...next.map((other): Entry => [other.column, -1]),
      ]);
    });
  }
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
      leg.hops.some((hop) => isOn(hop) && !reachesBack(side, hop, place, foreign, spendReserve)),
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
