import type { Commodity } from '../../contract/common.ts';
import { drinkingShare } from '../crew/gap-grades.ts';
import { bearableL, type Leg, legNeed, tanksL } from './leg.ts';
import { type CarryProblem, haltsBetween, haltsOf, otherOf } from './problem.ts';

/**
 * Litres by which the fixed tanks may be left short on a leg, were every halt of the other commodity on it made: so many
 * that the reserve is still intact on arrival, none where it is not even so.
 */
export function mostShortL({ sides }: CarryProblem, commodity: Commodity, leg: Leg): number {
  // What is aboard at the start is as it was told.
  if (leg.from === 0) return 0;
  const side = sides[commodity];
  const { course, edges } = side;
  const { rig } = course;
  const need = legNeed(side, leg.from, leg.to);
  const viaM = haltsBetween(haltsOf(sides[otherOf(commodity)]), edges[leg.from]!, edges[leg.to]!).reduce(
    (sum, halt) => sum + halt.bothWaysM,
    0,
  );
  const perDay = rig.water.litresPerDay.high;
  const days = need.days + viaM * course.off.days;
  const needL =
    commodity === 'fuel'
      ? need.needL + viaM * course.off.litres
      : (course.charge === 'elapsed' ? days : Math.ceil(days - 1e-9)) * perDay;
  const spareL = bearableL(side, tanksL(side, leg.from), leg.cans) - needL;
  const { shareOfNeed } = rig[commodity].reserve;
  // A litre less lowers what can be borne by this at the most.
  const ofAll = 1 / (1 + shareOfNeed);
  const graded = commodity === 'water' && rig.water.grades !== null;
  const perLitre = graded ? Math.max(ofAll, 1 / Math.max(1e-9, drinkingShare(rig) + shareOfNeed)) : ofAll;
  return Math.max(0, Math.min(tanksL(side, leg.from), spareL / perLitre));
}
