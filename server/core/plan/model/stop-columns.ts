import { COMMODITIES } from '../../quantity/commodities.ts';
import { stopNumbers } from '../question/stop-numbers.ts';
import { type CarrySides, edgeAt } from '../side/carry-side.ts';
import { type Halting, haltingAt } from '../side/lost-time.ts';
import type { LegColumns } from './columns.ts';
import type { MipBuilder, MipEntry } from './mip.ts';

/** One of the value of a way's column, metres: the solver does best with values of one size with those of cans (ours). */
export const COST_M = 1000;

/** The columns of what is lost and driven at supply stops, each with the most of either commodity. */
export interface StopColumns {
  readonly lost: readonly number[];
  readonly driving: readonly number[];
}

/** Adds a column for each stop that costs something: fuel and water of one stop are one detour, the longer of the two. */
export function stopColumns(builder: MipBuilder, sides: CarrySides, legs: LegColumns): StopColumns {
  const columns = (part: keyof Halting): number[] =>
    [...entriesByStop(sides, legs, part)].map((commodities) => {
      const column = builder.column(0, Number.POSITIVE_INFINITY, false);
      for (const entries of commodities) builder.atMost(0, [...entries, [column, -1]]);
      return column;
    });
  return { lost: columns('lostM'), driving: columns('drivingM') };
}

/** What the legs of each commodity cost at each stop where any does. */
function entriesByStop(
  sides: CarrySides,
  legs: LegColumns,
  part: keyof Halting,
): Iterable<readonly MipEntry[][]> {
  const numbers = stopNumbers(sides);
  const stops = new Map<number, MipEntry[][]>();
  for (const commodity of COMMODITIES) {
    const side = sides[commodity];
    const ofStops = new Map<number, MipEntry[]>();
    for (const { leg, column } of legs[commodity])
      for (const [stop, metres] of costByStop(leg.hops.map(({ to }) => edgeAt(side, to)))) {
        const entries = ofStops.get(stop) ?? [];
        entries.push([column, metres / COST_M]);
        ofStops.set(stop, entries);
      }
    for (const [stop, entries] of ofStops) stops.set(stop, [...(stops.get(stop) ?? []), entries]);

    function costByStop(ends: readonly Parameters<typeof haltingAt>[1][]): Map<number, number> {
      const costs = new Map<number, number>();
      for (const edge of ends) {
        const stop = numbers.get(edge);
        const metres = haltingAt(side, edge)[part];
        if (stop !== undefined && metres > 0) costs.set(stop, (costs.get(stop) ?? 0) + metres);
      }
      return costs;
    }
  }
  return stops.values();
}
