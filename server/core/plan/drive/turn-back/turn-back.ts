import { type Run, type RunPoint, runOf } from '../run.ts';
import type { Stretch } from '../stretch.ts';
import { lastHolding, overBack } from '../way-points.ts';

/**
 * The turn-back point with the real levels: the last place from which the supply behind is regained with the reserve, if
 * so much is lost there; null where it cannot be regained at all.
 */
export const turnBackOf = (run: Run, lostL: (point: RunPoint) => number = () => 0): number | null =>
  lastHolding(run.points, (point) => overBack(run, point, lostL(point)));

/** That of a leg of a plan, metres along the route: what is in cans kept for washing counts as drinking water here. */
export const lastWayBackM = (stretch: Stretch): number | null =>
  turnBackOf(runOf({ ...stretch, washingCans: false }));
