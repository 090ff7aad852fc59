import type { Commodity } from '../../../contract/common.ts';
import { drinkingShare } from '../../gaps/gap-grades.ts';
import { bearableL, type Leg, legNeed, withDetours, withFilling } from '../question/leg.ts';
import { type CarryProblem, costOf, haltsBetween, haltsOf, otherOf } from '../question/problem.ts';

/**
 * Litres by which the fixed tanks may be left short on a leg, were every halt of the other commodity on it made: so many
 * that the reserve is still intact on arrival, none where it is not even so.
 */
export function mostShortL({ sides, oneFailure }: CarryProblem, commodity: Commodity, leg: Leg): number {
  // Against a failure the way back, or on in vain, may take every litre.
  if (oneFailure !== null) return 0;
  // What is aboard at the start is as it was told; over supplies that do not give all every litre may be needed.
  if (leg.from === 0 || leg.hops.length > 1) return 0;
  const side = sides[commodity];
  const { course, edges } = side;
  const { rig } = course;
  const [{ from, to, tankL, cans, filledL }] = leg.hops;
  const foreign = haltsOf(sides[otherOf(commodity)], course);
  const viaM = costOf(haltsBetween(foreign, edges[from]!, edges[to]!));
  const need = withDetours(side, withFilling(side, legNeed(side, from, to), from, filledL), viaM);
  const spareL = bearableL(side, tankL, cans) - need.needL;
  const { shareOfNeed } = rig[commodity].reserve;
  // A litre less lowers what can be borne by this at the most.
  const ofAll = 1 / (1 + shareOfNeed);
  const graded = commodity === 'water' && rig.water.grades !== null;
  const perLitre = graded ? Math.max(ofAll, 1 / Math.max(1e-9, drinkingShare(rig) + shareOfNeed)) : ofAll;
  return Math.max(0, Math.min(tankL, spareL / perLitre));
}
