import type { Commodity } from '../../../contract/common.ts';
import type { Passing } from '../../supply/points/passing.ts';

/** A supply stop reaches at most so far from its first passing, metres (ours). */
const STOP_SPAN_M = 3000;

/** Passings close together, taken as one place to halt. */
export interface SupplyStop {
  /** Of its first and its last passing, metres along the route. */
  readonly fromM: number;
  readonly toM: number;
  /** In route order; each can be skipped singly. */
  readonly passings: readonly Passing[];
  readonly offers: Readonly<Record<Commodity, boolean>>;
}

/** Things that lie close together, in route order. */
export type Group<T> = readonly [T, ...T[]];

/** Puts what lies close together into one group each, in route order: a group spans at most so far from its first. */
export function groupedBySpan<T extends { readonly atM: number }>(items: readonly T[]): Group<T>[] {
  const groups: [T, ...T[]][] = [];
  for (const item of [...items].sort((a, b) => a.atM - b.atM)) {
    const open = groups.at(-1);
    if (open !== undefined && item.atM - open[0].atM <= STOP_SPAN_M) open.push(item);
    else groups.push([item]);
  }
  return groups;
}

/** The passings that count, of both commodities, as supply stops in route order. */
export function supplyStops(passings: readonly Passing[]): SupplyStop[] {
  const counting = passings.filter(({ counts }) => counts);
  return groupedBySpan(counting).map((group): SupplyStop => {
    const offers = (commodity: Commodity) => group.some((passing) => passing.commodity === commodity);
    return {
      fromM: group[0].atM,
      toM: Math.max(...group.map(({ atM }) => atM)),
      passings: group,
      offers: { fuel: offers('fuel'), water: offers('water') },
    };
  });
}
