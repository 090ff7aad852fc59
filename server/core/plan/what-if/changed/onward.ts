import type { Commodity } from '../../../../contract/common.ts';
import { standingLPerDay } from '../../../gaps/course/standing.ts';
import { SLACK } from '../../../quantity/slack.ts';
import type { Basis } from '../../drive/basis.ts';
import { pointsAt, type Run, runOf } from '../../drive/run.ts';
import type { Stretch } from '../../drive/stretch.ts';
import { overBack } from '../../drive/way-points.ts';
import { type FailingStop, failsWith } from '../../failure/failing-stops.ts';
import { leaving } from '../../legs/leg-need.ts';
import { type Departure, refill } from '../../legs/stock.ts';
import { type CarrySide, countingOf, drawableOf } from '../../side/carry-side.ts';
import { isBound, type SupplyEdge } from '../../side/supply-edge.ts';
import { stockAfter } from './changed-runs.ts';
import { detoursOver, type FailedStretch } from './failed-stretches.ts';

/** What is best done behind a stop that fails. */
export interface Onward {
  /** The tighter part of it: to a supply that counts, or from there to the next that is used. */
  readonly run: Run;
  /** The supply that it goes by, where that is not the next that is used. */
  readonly by: SupplyEdge | null;
}

/**
 * Of all supplies that count, that do not fail as well and that still lie ahead, or back on the way with the reserve kept,
 * the one by which most is left above the reserve, at the worse of both ends; the next that is used where none does better.
 */
export function onwardOver(
  basis: Basis,
  commodity: Commodity,
  over: FailedStretch,
  stop: FailingStop,
): Onward {
  const { stretch } = over;
  let best: Onward = { run: runOf(stretch), by: null };
  if (best.run.marginL >= -SLACK) return best;
  for (const at of countingOf(basis.sides[commodity].side)) {
    const isOnWay = at.kind === 'passing' && at.atM > stretch.from.atM && at.atM < stretch.to.atM;
    if (!isOnWay || failsWith(stop, at)) continue;
    const run = runBy(basis, over, at);
    if (run !== null && run.marginL > best.run.marginL + SLACK) best = { run, by: at };
  }
  return best;
}

/** The tighter of going to a supply on the way of a stretch, and on from it; null where it is not gained. */
function runBy(basis: Basis, over: FailedStretch, at: SupplyEdge): Run | null {
  const { stretch, stops } = over;
  const { side, cans } = basis.sides[stretch.course.commodity];
  const { course } = side;
  const [{ atM: failedM }] = stops;
  const { from, to } = stretch;
  // With cans that the plan does not have full the vehicle is heavier than planned.
  const there = runOf({
    ...stretch,
    course,
    to: at,
    detours: detoursOver(basis, course, { from, to: at, stops }),
  });
  const isBehind = at.atM < failedM;
  if (isBehind && isBound(at)) return null;
  const cameL = isBehind ? regainedL(stretch, failedM, at) : there.figures.arriveL;
  if (cameL === null) return null;
  const {
    tankL,
    cans: full,
    filledL,
  } = isBound(at) ? refill(side, at, stockAfter(side, there), cans) : fullDeparture(side, cans, cameL);
  const ahead = detoursOver(basis, course, { from: at, to, stops }).filter(
    ({ atM }) => atM > Math.max(at.atM, failedM),
  );
  const on = runOf({ ...stretch, course, tankL, cans: full, from: leaving(at, filledL), detours: ahead });
  return isBehind || on.marginL < there.marginL ? on : there;
}

/** With everything full, having come with so much. */
const fullDeparture = (side: CarrySide, cans: number, cameL: number): Departure => {
  const tankL = drawableOf(side);
  return { tankL, cans, filledL: Math.max(0, tankL + cans * side.canL - Math.max(0, cameL)) };
};

/**
 * What is left on having come back to a supply, and waited there, from where another was sought in vain; null where that is
 * less than the reserve.
 */
function regainedL(stretch: Stretch, failedM: number, at: SupplyEdge): number | null {
  const run = runOf(stretch);
  const point = pointsAt(run, failedM).at(-1);
  const overL = point === undefined ? null : overBack(run, point);
  if (overL === null) return null;
  const { course } = stretch;
  // The way back to where the stretch begins, less the part of it behind the supply.
  const behindL = Math.min(...pointsAt(run, at.atM).map(({ backL }) => backL ?? 0));
  const leftL =
    overL + behindL - at.detourM * course.off.homeLitres - (at.waitDays ?? 0) * standingLPerDay(course);
  return leftL < 0 ? null : leftL + run.keepBackL;
}
