import type { Level } from '../quantity/level.ts';
import type { Course, EdgeM } from './course.ts';
import type { Way } from './need.ts';
import { amountBetween, breaksInside, jumpAt } from './profile.ts';
import { standingLPerDay } from './standing.ts';

/**
 * Litres of a way as they go place by place: what is charged over them (water goes by every day begun) is spread over
 * the whole way.
 */
export function plainLitres(course: Course, from: EdgeM, to: EdgeM, way: Way): number {
  const onwardL = course.commodity === 'water' ? way.onwardExtraDays * course.rig.water.litresPerDay.high : 0;
  const standingL = way.standingDays * standingLPerDay(course);
  return (
    amountBetween(course.litres.out, from.atM, to.atM) + way.offM * course.off.litres + onwardL + standingL
  );
}

/**
 * The level along a gap, from what is aboard on leaving `from` to what is aboard on reaching `to`, detours and the
 * way past the end of the route included.
 */
export function levelsOf(
  course: Course,
  from: EdgeM,
  to: EdgeM,
  figures: { way: Way; needL: number; departL: number; arriveL: number },
): Level[] {
  const { way, needL, departL, arriveL } = figures;
  const { out } = course.litres;
  const plainL = plainLitres(course, from, to, way);
  const spread = plainL === 0 ? 1 : needL / plainL;

  let litres = departL;
  const levels: Level[] = [{ atM: from.atM, litres }];
  const drop = (atM: number, by: number) => {
    if (by === 0) return;
    litres -= by * spread;
    levels.push({ atM, litres });
  };
  drop(from.atM, from.detourM * course.off.litres + (from.fillDays ?? 0) * standingLPerDay(course));
  let reachedM = from.atM;
  for (const atM of [...breaksInside(out, from.atM, to.atM), to.atM]) {
    const standing = jumpAt(out, reachedM);
    if (reachedM < to.atM) drop(reachedM, standing);
    litres -= (amountBetween(out, reachedM, atM) - standing) * spread;
    if (atM > reachedM) levels.push({ atM, litres });
    reachedM = atM;
  }
  // The last drop, to the supply and past the end, also takes up what floats left over.
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
