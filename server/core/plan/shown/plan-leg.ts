import type { Commodity, Evidence, Verdict } from '../../../contract/common.ts';
import type { PlanEdge } from '../side/plan-edge.ts';

/** From one supply that is used to the next, litres at the rate the verdict uses. */
export interface PlanLeg {
  readonly from: PlanEdge;
  readonly to: PlanEdge;
  /** Full on leaving `from`. */
  readonly cans: number;
  /** In the fixed tanks on leaving, and by how much that is short of full for the sake of a permitted mass. */
  readonly tankL: number;
  readonly shortL: number;
  /** With cans. */
  readonly departL: number;
  readonly needL: number;
  readonly reserveL: number;
  readonly arriveL: number;
  /** Of drinking grade, where that is less. */
  readonly marginL: number;
  readonly verdict: Verdict;
  readonly acrossNoData: boolean;
  readonly weakest: Evidence | null;
  readonly turnBackM: number | null;
}

/** Cans that are carried full from one place until they are poured; metres along the route. */
export interface PlanCarry {
  readonly commodity: Commodity;
  readonly cans: number;
  readonly litres: number;
  /** Filled at. */
  readonly from: PlanEdge;
  /** The next supply of that commodity that is used. */
  readonly to: PlanEdge;
  readonly fromM: number;
  /** Where the last is poured; `to` where one is still full on arrival. */
  readonly toM: number;
  /** First can to last; those still full on arrival are not among them. */
  readonly pourAtM: readonly number[];
}

/** Levels at a place; two at one place are a fill, a pour or a drop. Straight lines between. */
export interface PlanLevel {
  readonly atM: number;
  readonly tankL: number;
  /** In each fixed tank, in the order of the rig; left out where there are several and the rig does not tell how they empty. */
  readonly tanksL?: readonly number[];
  readonly cansL: readonly number[];
  readonly totalL: number;
  /** Of water, where a crew tells the grades. */
  readonly drinkableL?: number;
  readonly washingL?: number;
}
