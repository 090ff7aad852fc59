import { aboardOf } from '../../crew/needs/graded-store.ts';
import type { EdgeM } from '../../gaps/course.ts';
import { drinkingShare } from '../../gaps/gap-grades.ts';
import { returnNeedL } from '../../gaps/need.ts';
import { canBeDrivenBack } from '../../gaps/turn-back.ts';
import { SLACK } from '../../quantity/slack.ts';
import { arriveWith, leaveBound } from '../question/bound-stop.ts';
import { bearableL, type Hop, leaving, legNeed, withDetours, withFilling } from '../question/leg.ts';
import { type CarrySide, costOf, type Halt, haltsBetween, inVainM } from '../question/problem.ts';

/** Litres of all water, or of fuel, that may be used until the next supply when a stop has failed. */
export function bearableOnFailureL(
  side: CarrySide,
  tankL: number,
  cans: number,
  spendReserve: boolean,
): number {
  if (!spendReserve) return bearableL(side, tankL, cans);
  const { course, canL, cansDrinkable } = side;
  const allL = tankL + cans * canL;
  const store = course.commodity === 'water' ? course.rig.water.grades : null;
  const share = drinkingShare(course.rig);
  if (store === null || share === 0) return allL;
  const { drinkingL, anyL } = aboardOf(store, tankL);
  return Math.min(allL, (drinkingL + anyL + (cansDrinkable ? cans * canL : 0)) / share);
}

/**
 * Whether a hop's end can be gone to in vain and the end of the hops that follow still be reached, what is had on the
 * way included and every halt of the other commodity made.
 */
export function reachesOn(
  side: CarrySide,
  hop: Hop,
  following: readonly Hop[],
  foreign: readonly Halt[],
  spendReserve: boolean,
): boolean {
  const { edges } = side;
  let left: Pick<Hop, 'tankL' | 'cans' | 'filledL'> = hop;
  let from = hop.from;
  return following.every(({ to }, index) => {
    const inVain = index === 0 ? inVainM(side.course, edges[hop.to]!) : 0;
    const viaM = inVain + costOf(haltsBetween(foreign, edges[from]!, edges[to]!));
    const { needL } = withDetours(side, withFilling(side, legNeed(side, from, to), from, left.filledL), viaM);
    if (needL > bearableOnFailureL(side, left.tankL, left.cans, spendReserve) + SLACK) return false;
    const next = following[index + 1];
    if (next !== undefined) left = leaveBound(side, edges[to]!, arriveWith(side, left, needL), next.cans);
    from = to;
    return true;
  });
}

/**
 * Whether a place of a hop can be gone to and the hop's beginning be regained, every halt of the other commodity on the
 * way made: its end, where that gives nothing, or a place on the way where the other commodity was sought in vain.
 */
export function reachesBack(
  side: CarrySide,
  hop: Hop,
  place: EdgeM,
  foreign: readonly Halt[],
  spendReserve: boolean,
): boolean {
  const from = leaving(side.edges[hop.from]!, hop.filledL);
  if (!canBeDrivenBack(side.course, from, place)) return false;
  const viaM = costOf(haltsBetween(foreign, from, place));
  const mostL = bearableOnFailureL(side, hop.tankL, hop.cans, spendReserve);
  return backNeedL(side, from, place, viaM) <= mostL + SLACK;
}

/** The place of a supply of the other commodity on the way of this one; the way to it is a halt's. */
export const onTheWay = ({ id, name, atM }: EdgeM): EdgeM => ({
  kind: 'passing',
  id: `${id} on the way`,
  name,
  atM,
  detourM: 0,
  evidence: null,
});

/** Litres out and home again, with detours on the way out; water by days begun may begin one more for them. */
export function backNeedL({ course }: CarrySide, from: EdgeM, to: EdgeM, viaM: number): number {
  const begunL =
    course.commodity === 'water' && course.charge === 'days-begun' && viaM > 0
      ? course.rig.water.litresPerDay.high
      : 0;
  return returnNeedL(course, from, to) + viaM * course.off.litres + begunL;
}
