import type { Commodity, Evidence } from '../../../contract/common.ts';
import type { SupplyKind } from '../../phrases/said/supply-kinds.ts';

/** A passing of a supply stop; what is null is known only where it is used. */
export interface PlanStopPassing {
  readonly id: string;
  readonly name: string | null;
  readonly kind: SupplyKind;
  readonly commodity: Commodity;
  readonly atM: number;
  readonly detourM: number;
  readonly evidence: Evidence;
  /** Passed by when false. */
  readonly used: boolean;
  /** Aboard on arrival, filled in (negative: let go for the sake of a permitted mass), full cans on leaving. */
  readonly arriveL: number | null;
  readonly fillL: number | null;
  readonly cansFull: number | null;
  /** The most that is to be had there, where it was told. */
  readonly mostL: number | null;
  /** Hours of waiting as told, and of filling and treating where the flow is known; reckoned with where it is used. */
  readonly waitHours: number;
  readonly fillHours: number;
}

/** Passings within 3 km, taken as one place to halt; metres along the route. */
export interface PlanStop {
  readonly fromM: number;
  readonly toM: number;
  readonly used: boolean;
  readonly passings: readonly PlanStopPassing[];
}
