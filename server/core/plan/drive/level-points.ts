import type { Course, EdgeM } from '../../gaps/course.ts';
import { plainLitres } from '../../gaps/levels.ts';
import { amountBetween, breaksInside, jumpAt } from '../../gaps/profile.ts';
import type { Reckoning } from '../../gaps/reckon.ts';
import { standingLPerDay } from '../../gaps/standing.ts';
import type { Level } from '../../quantity/level.ts';

/** A halt of the other commodity on the way: there and back, and the time it takes put as metres off the route. */
export interface Detour {
  atM: number;
  bothWaysM: number;
}

/**
 * All that is aboard of a commodity along a leg, each detour to a supply of the other commodity in its place: straight
 * lines between the points, two points at one place are a drop. Water charged by days begun is spread over the leg.
 */
export function levelPoints(
  course: Course,
  from: EdgeM,
  to: EdgeM,
  { departL, needL, arriveL, way }: Reckoning,
  detours: readonly Detour[],
): Level[] {
  const { out } = course.litres;
  const plainL = plainLitres(course, from, to, way);
  const spread = plainL === 0 ? 1 : needL / plainL;

  let litres = departL;
  const points: Level[] = [{ atM: from.atM, litres }];
  const drop = (atM: number, byL: number) => {
    if (byL === 0) return;
    litres -= byL * spread;
    points.push({ atM, litres });
  };
  const detoursAt = (atM: number) =>
    detours.filter((detour) => detour.atM === atM).reduce((sum, { bothWaysM }) => sum + bothWaysM, 0);
  const inside = detours.map(({ atM }) => atM).filter((atM) => atM > from.atM && atM < to.atM);
  const places = [...new Set([...breaksInside(out, from.atM, to.atM), ...inside, to.atM])].sort(
    (a, b) => a - b,
  );

  drop(
    from.atM,
    (from.detourM + detoursAt(from.atM)) * course.off.litres + (from.fillDays ?? 0) * standingLPerDay(course),
  );
  let reachedM = from.atM;
  for (const atM of places) {
    const standing = jumpAt(out, reachedM);
    if (reachedM < to.atM) drop(reachedM, standing);
    litres -= (amountBetween(out, reachedM, atM) - standing) * spread;
    if (atM > reachedM) points.push({ atM, litres });
    if (atM < to.atM) drop(atM, detoursAt(atM) * course.off.litres);
    reachedM = atM;
  }
  // The last drop, to the supply and past the end, also takes up what floats left over.
  if (litres !== arriveL) points.push({ atM: to.atM, litres: arriveL });
  return points;
}
