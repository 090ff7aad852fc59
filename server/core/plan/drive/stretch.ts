import type { Course } from '../../gaps/course.ts';
import type { SupplyEdge } from '../question/problem.ts';
import type { Detour } from './level-points.ts';

/** From one supply that is used to the next, with what is aboard on leaving. */
export interface Stretch {
  course: Course;
  from: SupplyEdge;
  to: SupplyEdge;
  /** In the fixed tanks on leaving. */
  tankL: number;
  /** Full on leaving. */
  cans: number;
  canL: number;
  /** Set where cans are kept for washing water. */
  washingCans?: boolean;
  /** Further halts off the route on the way. */
  detours: readonly Detour[];
}
