import type { SpanM } from '../quantity/span.ts';

/** What is on board on a stretch beyond full fixed tanks and the owned cans empty, kg; negative where it is less. */
export interface LoadSpan extends SpanM {
  moreKg: number;
}

/** What a vehicle carries along a route. */
export interface Load {
  /** The heaviest that it may be anywhere, kg. */
  mostKg: number;
  /** Tiles the route, nowhere heavier than `mostKg`; empty where only that is known. */
  along: readonly LoadSpan[];
}

/** So much all the way. */
export const evenLoad = (mostKg: number): Load => ({ mostKg, along: [] });
