import { usableL } from '../../gaps/gap-grades.ts';
import { plainLitres } from '../../gaps/levels.ts';
import { amountBetween, breaksInside } from '../../gaps/profile.ts';
import { type Reckoning, reckon } from '../../gaps/reckon.ts';
import { oneWayLimitM } from '../../gaps/turn-back.ts';
import { SLACK } from '../../quantity/slack.ts';
import { containersAlong } from './containers.ts';
import { levelPoints } from './level-points.ts';
import type { Stretch } from './stretch.ts';

/** What is aboard at a place of a stretch, and what the way back from there takes; straight lines between points. */
export interface RunPoint {
  atM: number;
  /** All that is aboard. */
  litres: number;
  tankL: number;
  cansL: readonly number[];
  /** From here to the supply behind, without reserve; null where the way cannot be driven back. */
  backL: number | null;
}

/** A stretch driven. */
export interface Run {
  stretch: Stretch;
  figures: Reckoning;
  /** Of drinking grade, where that is less. */
  arriveL: number;
  marginL: number;
  /** Litres of all that may not be used up, so that the reserve, of drinking grade as well, is intact. */
  keepL: number;
  /** In route order, the last on the route beside `to`; two at one place are a fall, a pour or a halt. */
  points: RunPoint[];
}

/** Stretches are never changed, and each is asked for by many rows. */
const driven = new WeakMap<Stretch, Run>();

/** Drives a stretch with what it leaves with. */
export function runOf(stretch: Stretch): Run {
  const known = driven.get(stretch);
  if (known !== undefined) return known;
  const run = drive(stretch);
  driven.set(stretch, run);
  return run;
}

function drive(stretch: Stretch): Run {
  const { course, from, to, tankL, cans, canL, detours } = stretch;
  const viaM = detours.reduce((sum, { bothWaysM }) => sum + bothWaysM, 0);
  const washingCansL = stretch.washingCans === true ? cans * canL : 0;
  const figures = reckon(course, from, to, tankL + cans * canL, viaM, washingCansL);
  const { departL, needL, reserveL, way, grades } = figures;
  const levels = levelPoints(course, from, to, figures, detours);
  const capacityL = course.rig[course.commodity].drawableL;
  const held = containersAlong(levels, { capacityL, tankL, canL, cans }).levels;

  const plainL = plainLitres(course, from, to, way);
  // Water charged by days begun is spread over the stretch; the way back is charged alike.
  const spread = plainL === 0 ? 1 : needL / plainL;
  const limitM = oneWayLimitM(course, from.atM, to.atM);
  const backAt = (atM: number): number | null =>
    atM > limitM
      ? null
      : (amountBetween(course.litres.home, from.atM, atM) + from.detourM * course.off.litres) * spread;

  const points: RunPoint[] = [];
  const breaks = [...new Set([...breaksInside(course.litres.home, from.atM, to.atM), limitM])].sort(
    (a, b) => a - b,
  );
  let next = 0;
  held.forEach((level, index) => {
    const before = held[index - 1];
    const add = (atM: number, tank: number, cansL: readonly number[]) =>
      points.push({
        atM,
        tankL: tank,
        cansL,
        litres: cansL.reduce((sum, litres) => sum + litres, tank),
        backL: backAt(atM),
      });
    if (before !== undefined && before.atM < level.atM) {
      while (breaks[next] !== undefined && breaks[next]! <= before.atM) next += 1;
      for (; breaks[next] !== undefined && breaks[next]! < level.atM; next += 1) {
        const atM = breaks[next]!;
        const share = (atM - before.atM) / (level.atM - before.atM);
        const between = (a: number, b: number) => a + share * (b - a);
        add(
          atM,
          between(before.tankL, level.tankL),
          before.cansL.map((litres, can) => between(litres, level.cansL[can]!)),
        );
      }
    }
    add(level.atM, level.tankL, level.cansL);
  });
  dropDetours(points, from.atM, from.detourM > 0, to.atM);

  const drinking = grades?.drinking;
  const usable =
    course.commodity === 'water' ? usableL(course.rig, departL, reserveL, washingCansL) : departL - reserveL;
  return {
    stretch,
    figures,
    arriveL: Math.min(figures.arriveL, drinking?.arriveL ?? figures.arriveL),
    marginL: Math.min(figures.marginL, drinking?.marginL ?? figures.marginL),
    keepL: departL - usable,
    points,
  };
}

/** Leaves only what is on the route: the way from and to the supplies themselves is no place to turn back at. */
function dropDetours(points: RunPoint[], fromM: number, startsOff: boolean, toM: number): void {
  if (startsOff && points.length > 1 && points[1]!.atM === fromM) points.shift();
  const firstAtEnd = points.findIndex(({ atM }) => atM === toM);
  if (firstAtEnd > 0) points.splice(firstAtEnd + 1);
}

/** A point between two, at a place between theirs. */
export function pointBetween(before: RunPoint, after: RunPoint, atM: number): RunPoint {
  if (before.atM === after.atM) return before;
  const share = (atM - before.atM) / (after.atM - before.atM);
  const between = (a: number, b: number) => a + share * (b - a);
  return {
    atM,
    litres: between(before.litres, after.litres),
    tankL: between(before.tankL, after.tankL),
    cansL: before.cansL.map((litres, can) => between(litres, after.cansL[can]!)),
    backL:
      before.backL === null || after.backL === null
        ? before.backL === null || atM > before.atM
          ? null
          : before.backL
        : between(before.backL, after.backL),
  };
}

/** The points at a place, in order: those there, else one between its neighbours. */
export function pointsAt({ points }: Run, atM: number): RunPoint[] {
  const there = points.filter((point) => point.atM === atM);
  if (there.length > 0) return there;
  const next = points.findIndex((point) => point.atM > atM);
  if (next < 0) return [points.at(-1)!];
  if (next === 0) return [points[0]!];
  return [pointBetween(points[next - 1]!, points[next]!, atM)];
}

/**
 * The last place, metres along, before which `leftL` stays at or above nothing all the way; null where it is below at
 * once. `leftL` is linear between points and null where nothing can be said, which counts as below.
 */
export function lastHolding(
  points: readonly RunPoint[],
  leftL: (point: RunPoint) => number | null,
): number | null {
  let before: { atM: number; left: number } | null = null;
  for (const point of points) {
    const left = leftL(point);
    if (left === null) return before?.atM ?? null;
    if (left < -SLACK) {
      if (before === null) return null;
      const share = Math.max(0, before.left) / (Math.max(0, before.left) - left);
      return before.atM + share * (point.atM - before.atM);
    }
    before = { atM: point.atM, left };
  }
  return before?.atM ?? null;
}

/** The turn-back point with the real levels; null where the supply behind cannot be regained at all. */
export const turnBackOf = (run: Run): number | null =>
  lastHolding(run.points, ({ litres, backL }) => (backL === null ? null : litres - backL - run.keepL));
