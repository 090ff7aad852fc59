import type { Course, Edge } from './course.ts';
import { amountBetween, breaksInside, jumpAt } from './profile.ts';

/**
 * The last place of a gap, metres along the route, from which `from` can be reached again with `budgetL` (what is
 * aboard on leaving less the reserve) used up, out and home at the rates the verdict uses. Clamped to the gap, and to
 * the start of a stretch that cannot be driven back; null when the budget does not cover the detour alone.
 * Without detour, allowance and stays this is the point of safe return of air navigation,
 * distance = fuel / (litres per km out + litres per km home) (check-values P10, P14).
 */
export function turnBackM(course: Course, from: Edge, to: Edge, budgetL: number): number | null {
  const { out, home } = course.litres;
  const limitM = oneWayLimitM(course, from.atM, to.atM);

  let left = budgetL - 2 * from.detourM * course.off.litres;
  if (left < 0) return null;
  const breaks = new Set([...breaksInside(out, from.atM, limitM), ...breaksInside(home, from.atM, limitM)]);
  let reachedM = from.atM;
  for (const atM of [...[...breaks].sort((a, b) => a - b), limitM]) {
    if (atM === reachedM) break;
    const standing = jumpAt(out, reachedM);
    left -= standing;
    if (left < 0) return reachedM;
    const stepL = amountBetween(out, reachedM, atM) - standing + amountBetween(home, reachedM, atM);
    if (stepL > left) return reachedM + (left / stepL) * (atM - reachedM);
    left -= stepL;
    reachedM = atM;
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
