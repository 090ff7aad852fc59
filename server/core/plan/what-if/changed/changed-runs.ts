import type { Commodity } from '../../../../contract/common.ts';
import type { Reckoned } from '../../../analyse/analyse.ts';
import { startLevel } from '../../../gaps/course/start-level.ts';
import { settleTrip } from '../../../trip/settle-trip.ts';
import type { Basis } from '../../drive/basis.ts';
import { type Run, runOf } from '../../drive/run.ts';
import type { Stretch } from '../../drive/stretch.ts';
import { arriveWith, refill, type Stock } from '../../legs/stock.ts';
import type { CarrySide } from '../../side/carry-side.ts';
import { byCommodity } from '../../side/other-of.ts';
import { isBound } from '../../side/supply-edge.ts';
import type { Change } from './changes.ts';

/** All stretches of a commodity driven with other rates, the same stops and the same cans. */
export type ChangedRuns = Readonly<Record<Commodity, readonly Run[]>>;

export const runsAsPlanned = ({ sides }: Basis): ChangedRuns =>
  byCommodity((commodity) => sides[commodity].stretches.map(runOf));

export function runsWith(reckoned: Reckoned, basis: Basis, { rig, trip }: Change): ChangedRuns {
  const courses = reckoned.coursesWith(rig, trip, basis.load);
  const settled = settleTrip(trip).trip;
  return byCommodity((commodity) => {
    const course = courses[commodity];
    const { stretches, side } = basis.sides[commodity];
    // What has been used since the last fill goes by the rate, so the start may be lower.
    const before = startLevel(side.course.rig, settled, commodity).litres;
    const filled = trip.plan?.fillAtStart?.[commodity] === true;
    const lessL = filled ? 0 : before - startLevel(course.rig, settled, commodity).litres;
    const runs: Run[] = [];
    for (const stretch of stretches)
      runs.push(runOf({ ...stretch, course, ...leftWith(side, stretch, runs.at(-1), lessL) }));
    return runs;
  });
}

/** What a stretch is left with behind another run to its beginning; the first with so much less. */
function leftWith(
  side: CarrySide,
  stretch: Stretch,
  before: Run | undefined,
  lessL: number,
): Pick<Stretch, 'tankL' | 'cans'> {
  const { from, tankL, cans } = stretch;
  if (before === undefined) return { tankL: Math.max(0, tankL - lessL), cans };
  if (!isBound(from)) return { tankL, cans };
  return refill(side, from, stockAfter(side, before), cans);
}

/** What is aboard at the end of a run; where all is used up, nothing. */
export function stockAfter(side: CarrySide, { stretch, figures }: Run): Stock {
  const { tankL, cans } = arriveWith(side, stretch, figures.needL);
  return { tankL: Math.max(0, tankL), cans };
}
