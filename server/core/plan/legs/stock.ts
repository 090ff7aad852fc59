import { SLACK } from '../../quantity/slack.ts';
import { type CarrySide, drawableOf, tanksL } from '../side/carry-side.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import { pourAfterL } from './pour.ts';

/** What is aboard of a commodity: litres in the fixed tanks, and full cans. */
export interface Stock {
  readonly tankL: number;
  readonly cans: number;
}

/** What a supply is left with, and how much of it was filled in there at the most. */
export interface Departure extends Stock {
  readonly filledL: number;
}

type Store = Pick<CarrySide, 'course' | 'canL'>;

/** A supply that gives all that is wanted, left with so many cans full. */
export function fullDeparture(side: CarrySide, from: number, cans: number): Departure {
  const tankL = tanksL(side, from);
  return { tankL, cans, filledL: tankL + cans * side.canL };
}

/** What is left of what a way began with; of a can that is drawn from, no more than the tanks have room for. */
export function arriveWith(store: Store, { tankL, cans }: Stock, usedL: number): Stock {
  const { canL } = store;
  const capacityL = drawableOf(store);
  const full = pourAfterL({ capacityL, tankL, canL, cans }).filter((afterL) => usedL < afterL).length;
  return { tankL: Math.min(capacityL, tankL + (cans - full) * canL - usedL), cans: full };
}

/**
 * What a supply that does not give all that is wanted is left with: cans up to `wantedCans` are filled first, whole, and
 * the tanks with the rest. Tanks first would leave what no longer fills a can; with fewer cans wanted they are filled so.
 * A can that comes full stays so.
 */
export function refill(
  store: Store,
  { terms, mostL: laidL }: SupplyEdge,
  arrival: Stock,
  wantedCans: number,
): Departure {
  const { canL } = store;
  const mostL = terms?.mostL ?? laidL ?? Number.POSITIVE_INFINITY;
  const affordable = Math.floor(mostL / canL + SLACK);
  const cans = terms?.fillsCans === false ? 0 : Math.max(0, Math.min(wantedCans - arrival.cans, affordable));
  const intoTanksL = Math.max(0, Math.min(drawableOf(store) - arrival.tankL, mostL - cans * canL));
  return {
    tankL: arrival.tankL + intoTanksL,
    cans: arrival.cans + cans,
    filledL: intoTanksL + cans * canL,
  };
}
