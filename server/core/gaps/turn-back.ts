import { kmPerDayOf } from '../rig/rig.ts';
import { breaksM, type Course, drivenM, type EdgeM, staysAt } from './course.ts';

/**
 * The last place of a gap, metres along the route, from which `from` can be reached again with `budgetL` (what is
 * aboard on leaving less the reserve) used up, by default out and home at the rate the verdict uses. Clamped to the gap, and to
 * the start of a stretch that cannot be driven back; null when the budget does not cover the detour alone.
 * Without detour, allowance and stays this is the point of safe return of air navigation,
 * distance = fuel / (litres per km out + litres per km home) (check-values P10, P14).
 */
export function turnBackM(
  course: Course,
  from: EdgeM,
  to: EdgeM,
  budgetL: number,
  rate: { outLPerWayM: number; homeLPerWayM: number } = alikeBothWays(course),
): number | null {
  const litresPerM = (rate.outLPerWayM + rate.homeLPerWayM) * course.allowanceFactor;
  const limitM = oneWayLimitM(course, from.atM, to.atM);

  let left = budgetL - litresPerM * from.detourM;
  if (left < 0) return null;
  let reachedM = from.atM;
  for (const atM of [...breaksM(course, from.atM, limitM), limitM]) {
    left -= standingL(course, reachedM);
    if (left < 0) return reachedM;
    const stepL = litresPerM * drivenM(course, reachedM, atM);
    if (stepL > left) return reachedM + (left / stepL) * (atM - reachedM);
    left -= stepL;
    reachedM = atM;
  }
  return limitM;
}

/** Whether the way back from `to` to `from` is open at all. */
export function canBeDrivenBack(course: Course, from: EdgeM, to: EdgeM): boolean {
  return oneWayLimitM(course, from.atM, to.atM) === to.atM;
}

function oneWayLimitM(course: Course, fromM: number, toM: number): number {
  return course.oneWay
    .filter((span) => span.toM > fromM && span.fromM < toM)
    .reduce((limit, span) => Math.min(limit, Math.max(fromM, span.fromM)), toM);
}

/** Litres for a metre of way at the rate the verdict uses; water by the days that the way takes. */
function alikeBothWays(course: Course): { outLPerWayM: number; homeLPerWayM: number } {
  const litresPerWayM =
    course.commodity === 'fuel'
      ? course.rig.fuel.litresPer100Km.high / 100_000
      : course.rig.water.litresPerDay.high / (kmPerDayOf(course.rig) * 1000);
  return { outLPerWayM: litresPerWayM, homeLPerWayM: litresPerWayM };
}

/** Water used by a stay at a place, on the way out only. */
function standingL(course: Course, atM: number): number {
  if (course.commodity === 'fuel') return 0;
  return course.rig.water.litresPerDay.high * staysAt(course, atM);
}
