import type { SpanM } from '../quantity/span.ts';

/** A stretch of the route on which the vehicle is carried by a ferry. */
export interface Ferry extends SpanM {
  /** "way/1" */
  readonly id: string;
  readonly name: string | null;
  /** From end to end. */
  readonly hours: number;
  /** True where the map says how long it takes. */
  readonly isMapped: boolean;
}
