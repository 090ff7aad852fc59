import { SLACK } from '../../../quantity/slack.ts';
import { type Run, type RunPoint, runOf } from '../run.ts';
import type { Stretch } from '../stretch.ts';

/**
 * The last place, metres along, before which `leftL` stays at or above nothing all the way; null where it is below at
 * once. `leftL` is linear between points and null where nothing can be said, which counts as below.
 */
export function lastHolding(
  points: readonly RunPoint[],
  leftL: (point: RunPoint) => number | null,
): number | null {
  let before: { atM: number; left: number } | null = null;
  for (const point of points) {
    const left = leftL(point);
    if (left === null) return before?.atM ?? null;
    if (left < -SLACK) {
      if (before === null) return null;
      const share = Math.max(0, before.left) / (Math.max(0, before.left) - left);
      return before.atM + share * (point.atM - before.atM);
    }
    before = { atM: point.atM, left };
  }
  return before?.atM ?? null;
}

/**
 * The turn-back point with the real levels: the last place from which the supply behind is regained with the reserve, if
 * so much is lost there; null where it cannot be regained at all.
 */
export const turnBackOf = (run: Run, lostL: (point: RunPoint) => number = () => 0): number | null =>
  lastHolding(run.points, (point) => overBack(run, point, lostL(point)));

/** Litres above the reserve on going back from a point; null where the way cannot be driven back. */
export const overBack = ({ keepBackL }: Run, { litres, backL }: RunPoint, lostL = 0): number | null =>
  backL === null ? null : litres - lostL - backL - keepBackL;

/** That of a leg of a plan, metres along the route: what is in cans kept for washing counts as drinking water here. */
export const lastWayBackM = (stretch: Stretch): number | null =>
  turnBackOf(runOf({ ...stretch, washingCans: false }));
