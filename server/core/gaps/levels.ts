import { kmPerDayOf } from '../rig/rig.ts';
import { breaksM, type Course, drivenM, type EdgeM, staysAt } from './course.ts';
import type { Way } from './need.ts';

/** What is aboard at a place of the route; two levels at one place make a drop (a detour, a stay). */
export interface Level {
  atM: number;
  litres: number;
}

/**
 * The level along a gap, from what is aboard on leaving `from` to what is aboard on reaching `to`, detours and the
 * way past the end of the route included. What a gap needs is spread over its way (fuel) or its days (water).
 */
export function levelsOf(
  course: Course,
  from: EdgeM,
  to: EdgeM,
  figures: { way: Way; needL: number; departL: number; arriveL: number },
): Level[] {
  const { way, needL, departL, arriveL } = figures;
  const kmPerDay = kmPerDayOf(course.rig);
  const litresPerDay = way.days === 0 ? 0 : needL / way.days;
  const litresPerWayKm =
    course.commodity === 'fuel' ? (way.wayKm === 0 ? 0 : needL / way.wayKm) : litresPerDay / kmPerDay;
  const standing = course.commodity === 'fuel' ? 0 : litresPerDay;
  const litresOver = (metres: number) => (metres / 1000) * course.allowanceFactor * litresPerWayKm;

  let litres = departL;
  const levels: Level[] = [{ atM: from.atM, litres }];
  const drop = (atM: number, by: number) => {
    litres -= by;
    if (by !== 0) levels.push({ atM, litres });
  };
  drop(from.atM, litresOver(from.detourM));
  let reachedM = from.atM;
  for (const atM of [...breaksM(course, from.atM, to.atM), to.atM]) {
    drop(reachedM, standing * staysAt(course, reachedM));
    litres -= litresOver(drivenM(course, reachedM, atM));
    levels.push({ atM, litres });
    reachedM = atM;
  }
  // The last drop takes up what floats left over, so that the line ends on the gap's own figure.
  if (litres !== arriveL) levels.push({ atM: to.atM, litres: arriveL });
  return levels;
}

/** Metres along where the level first falls below `litres`; null when it never does. */
export function firstBelowM(levels: readonly Level[], litres: number, slackL: number): number | null {
  let previous: Level | null = null;
  for (const level of levels) {
    if (level.litres < litres - slackL) {
      if (previous === null || previous.litres <= litres) return previous?.atM ?? level.atM;
      const share = (previous.litres - litres) / (previous.litres - level.litres);
      return previous.atM + share * (level.atM - previous.atM);
    }
    previous = level;
  }
  return null;
}
