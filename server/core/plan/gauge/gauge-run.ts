import type { Course, Doubtful } from '../../gaps/course/course.ts';
import type { SpanM } from '../../quantity/span.ts';
import type { Run } from '../drive/run.ts';
import type { WayPoint } from '../drive/way-points.ts';
import { type PlanEdge, planEdge } from '../side/plan-edge.ts';

/**
 * What of a run tells the least to have aboard at each of its places, and what is known of its way, of its
 * course only what lies on it: plain values, which a file to take along can carry.
 */
export interface GaugeRun extends Required<Doubtful>, Pick<Course, 'uncovered'> {
  readonly from: PlanEdge;
  readonly to: PlanEdge;
  /** Of all that is aboard on leaving. */
  readonly departL: number;
  /** Above the reserve on arrival: of all, or of drinking grade where that is less. */
  readonly marginL: number;
  /** Left on arrival that can serve, and what of all is aboard there that cannot. */
  readonly arriveL: number;
  readonly unfitL: number;
  /** Litres of all that may not be used up on the way on, and on the way back, so that the reserve is intact. */
  readonly keepL: number;
  readonly keepBackL: number;
  /** That the halts at its very end take, which its points leave out. */
  readonly lastHaltsL: number;
  /** In route order, on the route. */
  readonly points: readonly [WayPoint, ...WayPoint[]];
}

/** What of a run the gauge is read from. */
export function gaugeRunOf(run: Run): GaugeRun {
  const { stretch, figures, marginL, arriveL, keepL, keepBackL, points } = run;
  const { course, from, to, detours } = stretch;
  const haltsM = detours.reduce((sum, { atM, bothWaysM }) => (atM === to.atM ? sum + bothWaysM : sum), 0);
  const isOnIt = (span: SpanM) => span.toM > from.atM && span.fromM < to.atM;
  const [first, ...more] = points;
  return {
    from: planEdge(from),
    to: planEdge(to),
    departL: figures.departL,
    marginL: Math.min(marginL, figures.arriveL - keepL),
    arriveL,
    unfitL: figures.arriveL - arriveL,
    keepL,
    keepBackL,
    lastHaltsL: haltsM * course.off.litres,
    points: [wayPoint(first), ...more.map(wayPoint)],
    uncovered: course.uncovered.filter(isOnIt),
    sketchy: course.sketchy.filter(isOnIt),
    closed: course.closed?.filter(isOnIt) ?? [],
    onward: course.onward,
  };
}

/** Without what is in each container. */
const wayPoint = ({ atM, litres, backL }: WayPoint): WayPoint => ({ atM, litres, backL });
