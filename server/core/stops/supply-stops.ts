import type { Passing } from '../../contract/analysis.ts';
import type { Commodity } from '../../contract/common.ts';

/** A supply stop reaches at most so far from its first passing, metres (ours). */
export const STOP_SPAN_M = 3000;

/** Passings close together, taken as one place to halt. */
export interface SupplyStop {
  /** Of its first and its last passing, km along the route. */
  fromKm: number;
  toKm: number;
  /** In route order; each can be skipped singly. */
  passings: Passing[];
  offers: Record<Commodity, boolean>;
}

/** The passings that count, of both commodities, as supply stops in route order. */
export function supplyStops(passings: readonly Passing[]): SupplyStop[] {
  const stops: SupplyStop[] = [];
  const counting = passings.filter((passing) => passing.counts).sort((a, b) => a.atKm - b.atKm);
  for (const passing of counting) {
    const open = stops.at(-1);
    if (open !== undefined && (passing.atKm - open.fromKm) * 1000 <= STOP_SPAN_M) {
      open.passings.push(passing);
      open.toKm = passing.atKm;
      open.offers[passing.commodity] = true;
      continue;
    }
    stops.push({
      fromKm: passing.atKm,
      toKm: passing.atKm,
      passings: [passing],
      offers: { fuel: passing.commodity === 'fuel', water: passing.commodity === 'water' },
    });
  }
  return stops;
}
