import { usableL } from '../../gaps/gap-grades.ts';
import { amountBetween, breaksInside } from '../../gaps/profile.ts';
import { oneWayLimitM } from '../../gaps/turn-back.ts';
import { at } from '../../lists/at.ts';
import { allLitres, type ContainerLevel, levelBetween } from './containers.ts';
import { driveStretch, type StretchDrive, washingCansL } from './drive-stretch.ts';
import type { Stretch } from './stretch.ts';

/** What is aboard at a place of a stretch, and what the way back from there takes; straight lines between points. */
export interface RunPoint extends ContainerLevel {
  /** All that is aboard. */
  readonly litres: number;
  /** From here to the supply behind, without reserve; null where the way cannot be driven back. */
  readonly backL: number | null;
}

/** A stretch driven, with the way back from everywhere. */
export interface Run extends StretchDrive {
  /** Litres of all that may not be used up, so that the reserve, of drinking grade as well, is intact. */
  readonly keepL: number;
  /** In route order, the last on the route beside `to`; two at one place are a fall, a pour or a halt. */
  readonly points: readonly RunPoint[];
}

/** Stretches are never changed, and each is asked for by many rows. */
const runs = new WeakMap<Stretch, Run>();

/** Drives a stretch with what it leaves with. */
export function runOf(stretch: Stretch): Run {
  const run = runs.get(stretch) ?? reckonRun(driveStretch(stretch));
  runs.set(stretch, run);
  return run;
}

function reckonRun(drive: StretchDrive): Run {
  const { departL } = drive.figures;
  const backL = wayBackOf(drive);
  const withBack = (level: ContainerLevel): RunPoint => ({
    ...level,
    litres: allLitres(level),
    backL: backL(level.atM),
  });
  const points = withPlaces(drive).map(withBack);
  return { ...drive, keepL: departL - usableOf(drive), points: onRoute(points, drive.stretch) };
}

/** Of what is aboard on leaving, litres that may be used up. */
function usableOf({ stretch, figures }: StretchDrive): number {
  const { course } = stretch;
  const { departL, reserveL } = figures;
  return course.commodity === 'water'
    ? usableL(course.rig, departL, reserveL, washingCansL(stretch))
    : departL - reserveL;
}

/** Litres from a place back to the supply behind. */
function wayBackOf({ stretch }: StretchDrive): (atM: number) => number | null {
  const { course, from, to } = stretch;
  const limitM = oneWayLimitM(course, from.atM, to.atM);
  return (atM) =>
    atM > limitM ? null : amountBetween(course.litres.home, from.atM, atM) + from.detourM * course.off.litres;
}

/** The levels of a stretch, with a point wherever the way back bends or ends. */
function withPlaces({ stretch, levels }: StretchDrive): ContainerLevel[] {
  const { course, from, to } = stretch;
  const limitM = oneWayLimitM(course, from.atM, to.atM);
  return levels.flatMap((level, index) => {
    const before = levels[index - 1];
    if (before === undefined || before.atM >= level.atM) return [level];
    const bends = breaksInside(course.litres.home, before.atM, level.atM);
    const places = limitM > before.atM && limitM < level.atM ? [...new Set([...bends, limitM])] : bends;
    const inside = places.sort((a, b) => a - b).map((atM) => levelAt(before, level, atM));
    return [...inside, level];
  });
}

/** A level at a place between two. */
const levelAt = (before: ContainerLevel, after: ContainerLevel, atM: number): ContainerLevel => ({
  ...levelBetween(before, after, (atM - before.atM) / (after.atM - before.atM)),
  atM,
});

/** Leaves only what is on the route: the way from and to the supplies themselves is no place to turn back at. */
function onRoute(points: readonly RunPoint[], { from, to }: Stretch): RunPoint[] {
  const startsOff = from.detourM > 0 && points[1]?.atM === from.atM;
  const kept = startsOff ? points.slice(1) : [...points];
  const firstAtEnd = kept.findIndex(({ atM }) => atM === to.atM);
  return firstAtEnd > 0 ? kept.slice(0, firstAtEnd + 1) : kept;
}

/** A point between two, at a place between theirs. */
export function pointBetween(before: RunPoint, after: RunPoint, atM: number): RunPoint {
  if (before.atM === after.atM) return before;
  const share = (atM - before.atM) / (after.atM - before.atM);
  const between = (a: number, b: number) => a + share * (b - a);
  return {
    ...levelAt(before, after, atM),
    litres: between(before.litres, after.litres),
    backL: backBetween(before, after, atM, between),
  };
}

/** Behind the last point from where it can be driven back nothing can. */
function backBetween(
  before: RunPoint,
  after: RunPoint,
  atM: number,
  between: (a: number, b: number) => number,
): number | null {
  if (before.backL === null) return null;
  if (after.backL === null) return atM > before.atM ? null : before.backL;
  return between(before.backL, after.backL);
}

/** The points at a place, in order: those there, else one between its neighbours. */
export function pointsAt({ points }: Run, atM: number): readonly [RunPoint, ...RunPoint[]] {
  const [first, ...more] = points.filter((point) => point.atM === atM);
  if (first !== undefined) return [first, ...more];
  const next = points.findIndex((point) => point.atM > atM);
  if (next < 0) return [at(points, points.length - 1)];
  if (next === 0) return [at(points, 0)];
  return [pointBetween(at(points, next - 1), at(points, next), atM)];
}
