import type { Arrival } from '../../../contract/pace.ts';
import type { TimeThere } from '../../pace/time-there.ts';
import type { ContainerName } from '../../phrases/rig/mass.ts';
import type { SupplyKind } from '../../phrases/said/supply-kinds.ts';
import type { PlanEdge } from '../side/plan-edge.ts';
import type { Contact } from './contact.ts';

/** Litres that go into one tank, all tanks or so many cans; negative: let go. */
export interface Filling {
  readonly into: 'tank' | 'tanks' | 'cans';
  /** Of the tank, where it is one. */
  readonly name: ContainerName | null;
  /** Cans that are filled; 1 for a tank. */
  readonly count: number;
  readonly litres: number;
}

/** The latest moment at which somebody must call for help, so that it comes while there is water. */
export interface Alarm {
  /** From leaving; negative where the water does not last until help is there. */
  readonly afterHours: number;
  /** Local time or date, reckoned from the earliest that one may leave; null where no date is told. */
  readonly by: string | null;
}

/** What is done about one commodity at a halt; metres along the route. */
export interface HaltSupply {
  readonly at: PlanEdge;
  /** Null at the start and at the end. */
  readonly kind: SupplyKind | null;
  readonly lon: number | null;
  readonly lat: number | null;
  /** Null at the start. */
  readonly arriveL: number | null;
  /** Nothing at the end; at the start what is filled before leaving. Negative where so much is let go for a permitted mass. */
  readonly fillL: number;
  readonly into: readonly Filling[];
  /** The most that is to be had, where it was told. */
  readonly mostL: number | null;
  readonly cansFull: number;
  /** Null at the end. */
  readonly leaveL: number | null;
  /** Where the cans that are full on leaving are poured; those still full on the next arrival are not among them. */
  readonly pourAtM: readonly number[];
  /** The next supply that is used, or the end, and how far along the route; null at the end. */
  readonly next: { readonly at: PlanEdge; readonly lengthM: number } | null;
  /** The last place from which one can come back here with the reserve; null where there is none. */
  readonly turnBackM: number | null;
  readonly waitHours: number;
  readonly fillHours: number;
  /** What is filled times its price; null where no price is told. */
  readonly cost: number | null;
  /** Null for start, end and supplies of one's own: nobody is to be asked there. */
  readonly contact: Contact | null;
  /** Its mapped hours against the time of coming there. */
  readonly arrival: Arrival | null;
  /** Of water, where the trip tells the hours to help. */
  readonly alarm: Alarm | null;
}

/** The start, a stop that is used, or the end: one place to halt, for one commodity or both. */
export interface SheetHalt {
  readonly kind: 'start' | 'stop' | 'end';
  readonly atM: number;
  readonly time: TimeThere;
  readonly fuel: HaltSupply | null;
  readonly water: HaltSupply | null;
}
