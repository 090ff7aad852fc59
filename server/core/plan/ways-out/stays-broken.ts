import type { RigFile } from '../../../contract/rig.ts';
import { startLevel } from '../../gaps/course/start-level.ts';
import { evenLoad } from '../../mass/load.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { settleTrip } from '../../trip/settle-trip.ts';
import { loadKg } from '../question/can-kg.ts';
import { mostCansOf } from '../question/can-limits.ts';
import { questionOf, startWith } from '../question/question-of.ts';
import { brokenStretches } from './broken-stretches.ts';
import type { WaysOutContext } from './try-change.ts';

/**
 * Whether some stretch of a commodity by itself stays broken with another rig, the supplies as they were judged: told
 * quickly, before the whole trip is reckoned again for it.
 */
export function staysBroken({ reckoned }: WaysOutContext, rig: RigFile): boolean {
  const { trip } = reckoned.analysis;
  const { question } = questionOf(reckoned);
  const courses = reckoned.coursesWith(rig, trip, evenLoad(loadKg(rig, mostCansOf(question))));
  const settled = settleTrip(trip).trip;
  return COMMODITIES.some((commodity) => {
    const course = courses[commodity];
    const { drawableL } = course.rig[commodity];
    const { litres } = startLevel(course.rig, settled, commodity);
    const start = startWith(trip, commodity, { startL: litres, drawableL });
    return brokenStretches({ ...question.sides[commodity], course, ...start }).length > 0;
  });
}
