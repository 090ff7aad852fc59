import type { Commodity } from '../../../contract/common.ts';
import { drinkingShare } from '../../gaps/gap-grades.ts';
import { bearableL } from '../legs/bearable.ts';
import type { Leg } from '../legs/leg.ts';
import { filledNeed, withDetours } from '../legs/leg-need.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { edgeAt, endsOf } from '../side/carry-side.ts';
import { costOf, haltsBetween, haltsOf } from '../side/halts.ts';
import { otherOf } from '../side/other-of.ts';

/** A share of nothing is not to be divided by. */
const LEAST_SHARE = 1e-9;

/**
 * Litres by which the fixed tanks may be left short on a leg, were every halt of the other commodity on it made: so many
 * that the reserve is still intact on arrival, none where it is not even so.
 */
export function mostShortL({ sides, oneFailure }: CarryQuestion, commodity: Commodity, leg: Leg): number {
  // Against a failure the way back, or on in vain, may take every litre.
  if (oneFailure !== null) return 0;
  // What is aboard at the start is as it was told; over supplies that do not give all every litre may be needed.
  if (leg.from === 0 || leg.hops.length > 1) return 0;
  const side = sides[commodity];
  const { rig } = side.course;
  const [hop] = leg.hops;
  const foreign = haltsOf(sides[otherOf(commodity)], side.course);
  const viaM = costOf(haltsBetween(foreign, ...endsOf(side, hop)));
  const need = withDetours(side, filledNeed(side, hop, hop.filledL), viaM);
  const spareL = bearableL(side, hop, edgeAt(side, hop.to).atM) - need.needL;
  const { shareOfNeed } = rig[commodity].reserve;
  // A litre less lowers what can be borne by this at the most.
  const ofAll = 1 / (1 + shareOfNeed);
  const graded = commodity === 'water' && rig.water.grades !== null;
  const perLitre = graded
    ? Math.max(ofAll, 1 / Math.max(LEAST_SHARE, drinkingShare(rig) + shareOfNeed))
    : ofAll;
  return Math.max(0, Math.min(hop.tankL, spareL / perLitre));
}
