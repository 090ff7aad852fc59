import type { Evidence } from '../../../contract/common.ts';
import type { Edge } from '../../gaps/course/course.ts';
import { type CarrySide, edgeAt } from '../side/carry-side.ts';
import type { Departure } from './stock.ts';

/** The way from a supply to the next that is used, with everything between them passed by. */
export interface Hop extends Departure {
  /** Indexes of the side's edges. */
  readonly from: number;
  readonly to: number;
  /** Metres of detours to supplies of the other commodity that the hop still bears, there and back. */
  readonly spareM: number;
}

export type Hops = readonly [Hop, ...Hop[]];

/**
 * From one supply that gives all that is wanted to the next such: one hop, or several over supplies that do not. What it
 * leaves with hangs on nothing before it.
 */
export interface Leg {
  /** Indexes of the side's edges. */
  readonly from: number;
  readonly to: number;
  readonly hops: Hops;
  /** Litres by which the tanks may be left short without breaking the reserve; nothing is spent on detours then. */
  readonly spareL: number;
  /** From filling to pouring, summed over the cans, metres along the route; halts of the other commodity left out. */
  readonly canM: number;
}

export const lastHop = (hops: Hops): Hop => hops.at(-1) ?? hops[0];

/** Whether a leg calls at an edge on its way or at its end. */
export const callsAt = ({ hops }: Pick<Leg, 'hops'>, edge: number): boolean =>
  hops.some(({ to }) => to === edge);

/** The supplies that hops lead over, as a name: alike for all legs over the same ones. */
export const pathOf = ({ hops }: Pick<Leg, 'hops'>): string =>
  [hops[0].from, ...hops.map(({ to }) => to)].join(' ');

/**
 * The most full cans on a leg at a place strictly inside it. Where less is used than was allowed for, a can may still be
 * full past a supply at which it was to be filled again.
 */
export function mostCansAt(side: Pick<CarrySide, 'edges'>, { hops }: Pick<Leg, 'hops'>, atM: number): number {
  const index = hops.findIndex(({ to }) => edgeAt(side, to).atM > atM);
  return Math.max(hops[index]?.cans ?? 0, hops[index - 1]?.cans ?? 0);
}

/** What the evidence of a leg is at its weaker end; null between start and end. */
export function weakestEnd(from: Edge, to: Edge): Evidence | null {
  const ranks: Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
  return ranks.find((rank) => from.evidence === rank || to.evidence === rank) ?? null;
}
