import type { Commodity } from '../../../contract/common.ts';
import type { PlaceName } from '../../phrases/said/supply-kinds.ts';
import type { PlanEdge } from '../side/plan-edge.ts';

/** The least to have aboard of one commodity at a place, litres of all that can be used. */
export interface GaugeSide {
  /** To go on to the next supply that is used, with the reserve. */
  readonly onL: number;
  /** To go back to the supply behind, with the reserve; null where the way cannot be driven back. */
  readonly backL: number | null;
  /** Aboard there by the plan. */
  readonly plannedL: number;
  readonly from: PlanEdge;
  readonly to: PlanEdge;
}

/** One line of the gauge table. At a stop there are two: on arriving, and on leaving with what is filled there. */
export interface GaugeRow {
  readonly atM: number;
  readonly at: 'start' | 'step' | 'arriving' | 'leaving' | 'turn-back' | 'end';
  /** Of the stop, or of what it is turned back to. */
  readonly name: PlaceName | null;
  /** Whose stop or turn-back point it is. */
  readonly commodities: readonly Commodity[];
  readonly fuel: GaugeSide;
  readonly water: GaugeSide;
}

/** The gauge table; metres along the route. */
export interface Gauge {
  readonly basis: 'plan' | 'gaps';
  readonly stepM: number;
  readonly rows: readonly GaugeRow[];
}
