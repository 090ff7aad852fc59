import type { Level } from '../../quantity/level.ts';
import type { Course, Edge } from './course.ts';
import { amountBetween, breaksInside, jumpAt } from './profile.ts';
import { fillingL } from './standing.ts';

interface LevelWay {
  readonly course: Course;
  readonly from: Edge;
  readonly to: Edge;
}

/** A halt of the other commodity on the way: there and back, and the time it takes put as metres off the route. */
export interface Detour {
  readonly atM: number;
  readonly bothWaysM: number;
  /** Days of driving that it takes away; as though all of it were standing where it is not told. */
  readonly drivingDays?: number;
}

/**
 * The level along a way, from what is aboard on leaving `from` to what is aboard on reaching `to`, the way past the end
 * of the route and detours included: each of those that are listed in its place, what else is in the figures at the end.
 */
export function levelsOf(
  over: LevelWay,
  figures: { departL: number; arriveL: number },
  detours: readonly Detour[] = [],
): Level[] {
  const { course, from, to } = over;
  const { out } = course.litres;
  let litres = figures.departL;
  const levels: Level[] = [{ atM: from.atM, litres }];
  const drop = (atM: number, byL: number) => {
    if (byL === 0) return;
    litres -= byL;
    levels.push({ atM, litres });
  };
  const viaM = (atM: number) =>
    detours.filter((detour) => detour.atM === atM).reduce((sum, { bothWaysM }) => sum + bothWaysM, 0);
  drop(from.atM, (from.detourM + viaM(from.atM)) * course.off.litres + fillingL(course, from));
  let reachedM = from.atM;
  for (const atM of placesInside(over, detours)) {
    const standing = jumpAt(out, reachedM);
    if (reachedM < to.atM) drop(reachedM, standing);
    litres -= amountBetween(out, reachedM, atM) - standing;
    if (atM > reachedM) levels.push({ atM, litres });
    if (atM < to.atM) drop(atM, viaM(atM) * course.off.litres);
    reachedM = atM;
  }
  // The last drop, to the supply and past the end, also takes up what floats left over.
  if (litres !== figures.arriveL) levels.push({ atM: to.atM, litres: figures.arriveL });
  return levels;
}

/** Where a level bends or falls behind the start of a way, in order; its end last. */
function placesInside({ course, from, to }: LevelWay, detours: readonly Detour[]): number[] {
  const inside = detours.map(({ atM }) => atM).filter((atM) => atM > from.atM && atM < to.atM);
  const places = [...breaksInside(course.litres.out, from.atM, to.atM), ...inside, to.atM];
  return inside.length === 0 ? places : [...new Set(places)].sort((a, b) => a - b);
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
