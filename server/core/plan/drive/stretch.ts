import type { Course } from '../../gaps/course/course.ts';
import type { Detour } from '../../gaps/course/levels.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';

/** From one supply that is used to the next, with what is aboard on leaving. */
export interface Stretch {
  readonly course: Course;
  readonly from: SupplyEdge;
  readonly to: SupplyEdge;
  /** In the fixed tanks on leaving. */
  readonly tankL: number;
  /** Full on leaving. */
  readonly cans: number;
  readonly canL: number;
  /** Set where cans are kept for washing water. */
  readonly washingCans?: boolean;
  /** Further halts off the route on the way. */
  readonly detours: readonly Detour[];
}
