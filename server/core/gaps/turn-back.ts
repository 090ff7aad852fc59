import { pairsOf } from '../lists/pairs.ts';
import type { Course, Edge } from './course/course.ts';
import { amountBetween, breaksInside, jumpAt, sumBefore } from './course/profile.ts';
import { wayBackAlong } from './course/way-back.ts';

/**
 * The last place of a gap, metres along the route, from which `from` can be reached again with `budgetL` (what is
 * aboard on leaving less the reserve) used up, out and home at the rates the verdict uses, with every night that falls on
 * either way. Clamped to the gap, and to the start of a stretch that cannot be driven back; null when the budget does not
 * cover the detour alone.
 * Without detour, allowance and stays this is the point of safe return of air navigation,
 * distance = fuel / (litres per km out + litres per km home) (check-values P10, P14).
 */
export function turnBackM(course: Course, from: Edge, to: Edge, budgetL: number): number | null {
  const { out } = course.litres;
  const limitM = oneWayLimitM(course, from.atM, to.atM);
  const back = wayBackAlong({ course, from, toM: limitM });

  const onLeavingL = budgetL - from.detourM * course.off.litres;
  /** What is left of the budget on having come back from a place, before what the place itself has. */
  const leftL = (atM: number) => onLeavingL - amountBetween(out, from.atM, atM) - sumBefore(back, atM);
  if (leftL(from.atM) < 0) return null;
  const places = new Set([from.atM, ...breaksInside(out, from.atM, limitM), ...back.atM]);
  for (const [fromM, toM] of pairsOf([...places].sort((a, b) => a - b))) {
    const leftAfterL = leftL(fromM) - jumpAt(out, fromM) - jumpAt(back, fromM);
    if (leftAfterL < 0) return fromM;
    const leftThereL = leftL(toM);
    if (leftThereL < 0) return fromM + (leftAfterL / (leftAfterL - leftThereL)) * (toM - fromM);
  }
  return limitM;
}

/** Whether the way back from `to` to `from` is open at all. */
export function canBeDrivenBack(course: Course, from: Edge, to: Edge): boolean {
  return oneWayLimitM(course, from.atM, to.atM) === to.atM;
}

/** Where the first stretch that cannot be driven back begins; `toM` where there is none. */
export function oneWayLimitM(course: Course, fromM: number, toM: number): number {
  return course.oneWay
    .filter((span) => span.toM > fromM && span.fromM < toM)
    .reduce((limit, span) => Math.min(limit, Math.max(fromM, span.fromM)), toM);
}
