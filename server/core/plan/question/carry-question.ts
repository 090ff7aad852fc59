import type { CarrySides } from '../side/carry-side.ts';
import type { Cans } from './can-limits.ts';
import type { MassRoom } from './mass-room.ts';

/** What has to hold when a stop turns out dry or shut. */
export interface FailureRule {
  readonly spendReserve: boolean;
  /** The only stop that is asked to fail, by its number (see failing-stops.ts); every stop when left out. */
  readonly onlyStop?: number;
}

/** What a carry plan is to answer: both commodities on one route, and the room that the permitted masses leave. */
export interface CarryQuestion {
  readonly sides: CarrySides;
  /** Cans that are there already: only those beyond them are to be got. */
  readonly owned: Cans;
  /** Null where the rig tells no mass that is permitted. */
  readonly room: MassRoom | null;
  /** Set where every stop that is used may turn out dry or shut, one at a time. */
  readonly oneFailure: FailureRule | null;
  /** Not all supplies are looked at. */
  readonly suppliesLeftOut?: boolean;
}
