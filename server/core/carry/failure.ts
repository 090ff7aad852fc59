import { drinkingShare } from '../crew/gap-grades.ts';
import { aboardOf } from '../crew/graded-store.ts';
import type { EdgeM } from '../gaps/course.ts';
import { returnNeedL, SLACK } from '../gaps/need.ts';
import { canBeDrivenBack } from '../gaps/turn-back.ts';
import { bearableL, type Leg, legNeed, spareM, tanksL } from './leg.ts';
import { type CarrySide, type Halt, haltsBetween } from './problem.ts';

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

/** Whether a leg's end can be gone to in vain and `next` still be reached, every halt of the other commodity made. */
export function reachesOn(
  side: CarrySide,
  leg: Pick<Leg, 'from' | 'to' | 'cans'>,
  next: number,
  foreign: readonly Halt[],
  spendReserve: boolean,
): boolean {
  const { edges } = side;
  const viaM =
    2 * edges[leg.to]!.detourM +
    haltsBetween(foreign, edges[leg.from]!, edges[next]!).reduce((sum, halt) => sum + halt.bothWaysM, 0);
  const mostL = bearableOnFailureL(side, tanksL(side, leg.from), leg.cans, spendReserve);
  return spareM(side, legNeed(side, leg.from, next), mostL) >= viaM;
}

/** Whether a leg's end can be gone to in vain and its beginning be regained, every halt of the other commodity made. */
export function reachesBack(
  side: CarrySide,
  leg: Pick<Leg, 'from' | 'to' | 'cans'>,
  foreign: readonly Halt[],
  spendReserve: boolean,
): boolean {
  const { course, edges } = side;
  const from = edges[leg.from]!;
  const to = edges[leg.to]!;
  if (!canBeDrivenBack(course, from, to)) return false;
  const viaM = haltsBetween(foreign, from, to).reduce((sum, halt) => sum + halt.bothWaysM, 0);
  const mostL = bearableOnFailureL(side, tanksL(side, leg.from), leg.cans, spendReserve);
  return backNeedL(side, from, to, viaM) <= mostL + SLACK;
}

/** Litres out and home again, with detours on the way out; water by days begun may begin one more for them. */
export function backNeedL({ course }: CarrySide, from: EdgeM, to: EdgeM, viaM: number): number {
  const begunL =
    course.commodity === 'water' && course.charge === 'days-begun' && viaM > 0
      ? course.rig.water.litresPerDay.high
      : 0;
  return returnNeedL(course, from, to) + viaM * course.off.litres + begunL;
}
