import { jumpAt, type Profile, sumBefore } from '../../gaps/course/profile.ts';
import { wayBackAlong } from '../../gaps/course/way-back.ts';
import { usableL } from '../../gaps/gap-grades.ts';
import { oneWayLimitM } from '../../gaps/turn-back.ts';
import { at, numberAt } from '../../lists/at.ts';
import { allLitres, type ContainerLevel, levelBetween } from './containers.ts';
import { driveStretch, type StretchDrive, washingCansL } from './drive-stretch.ts';
import type { Stretch } from './stretch.ts';
import { pointsThere, type WayPoint, wayPointBetween } from './way-points.ts';

/** A point of a stretch with what is in each container. */
export type RunPoint = ContainerLevel & WayPoint;

/** A stretch driven, with the way back from everywhere. */
export interface Run extends StretchDrive {
  /** Litres of all that may not be used up, so that the reserve, of drinking grade as well, is intact. */
  readonly keepL: number;
  /** The same on the way back. */
  readonly keepBackL: number;
  /** In route order, the last on the route beside `to`; two at one place are a fall, a pour or a halt. */
  readonly points: readonly [RunPoint, ...RunPoint[]];
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
  const { course, from, to, detours } = drive.stretch;
  const limitM = oneWayLimitM(course, from.atM, to.atM);
  const back = wayBackAlong({ course, from, toM: limitM, detours });
  const [first, ...more] = placesOf(onRoute(drive), back).flatMap((there) =>
    withWayBack(there, back, limitM),
  );
  if (first === undefined) throw new RangeError('a stretch without a place');
  return { ...drive, ...keepOf(drive), points: [first, ...more] };
}

/** Of what is aboard on leaving, litres that may not be used up. */
function keepOf({ stretch, figures }: StretchDrive): Pick<Run, 'keepL' | 'keepBackL'> {
  const { course } = stretch;
  const { departL, reserveL, backReserveL } = figures;
  const keep = (litres: number) =>
    course.commodity === 'water'
      ? departL - usableL(course.rig, departL, litres, washingCansL(stretch))
      : litres;
  return { keepL: keep(reserveL), keepBackL: keep(backReserveL) };
}

/** Leaves only what is on the route: the way from and to the supplies themselves is no place to turn back at. */
function onRoute({ stretch: { from, to }, levels }: StretchDrive): readonly ContainerLevel[] {
  const startsOff = from.detourM > 0 && levels[1]?.atM === from.atM;
  const kept = startsOff ? levels.slice(1) : levels;
  const firstAtEnd = kept.findIndex(({ atM }) => atM === to.atM);
  return firstAtEnd > 0 ? kept.slice(0, firstAtEnd + 1) : kept;
}

/** What is aboard at one place, before and after what the place itself has. */
type Place = readonly [ContainerLevel, ...ContainerLevel[]];

/** The levels by place, and one more wherever the way back bends, jumps or ends. */
function placesOf(levels: readonly ContainerLevel[], back: Profile): Place[] {
  const places: Place[] = [];
  let next = 0;
  for (const level of levels) {
    const before = places.at(-1);
    const reached = before?.at(-1);
    if (before !== undefined && reached?.atM === level.atM) {
      places[places.length - 1] = [...before, level];
      continue;
    }
    for (; next < back.atM.length && numberAt(back.atM, next) < level.atM; next += 1) {
      const atM = numberAt(back.atM, next);
      if (reached !== undefined && atM > (places.at(-1)?.[0].atM ?? atM))
        places.push([levelAt(reached, level, atM)]);
    }
    places.push([level]);
  }
  return places;
}

/** The points of a place: what the way back takes goes from what it is before the place to what it is after, as litres go. */
function withWayBack(there: Place, back: Profile, limitM: number): RunPoint[] {
  const [first] = there;
  const withBack = (level: ContainerLevel, backL: number | null): RunPoint => ({
    ...level,
    litres: allLitres(level),
    backL,
  });
  if (first.atM > limitM) return there.map((level) => withBack(level, null));
  const beforeL = sumBefore(back, first.atM);
  const moreL = first.atM < limitM ? jumpAt(back, first.atM) : 0;
  const levels = there.length === 1 && moreL !== 0 ? [first, first] : there;
  const goneL = allLitres(first) - allLitres(at(levels, levels.length - 1));
  return levels.map((level, index) => {
    const last = index === levels.length - 1 ? 1 : 0;
    const share = goneL === 0 ? last : (allLitres(first) - allLitres(level)) / goneL;
    return withBack(level, beforeL + share * moreL);
  });
}

/** A level at a place between two. */
const levelAt = (before: ContainerLevel, after: ContainerLevel, atM: number): ContainerLevel => ({
  ...levelBetween(before, after, (atM - before.atM) / (after.atM - before.atM)),
  atM,
});

/** A point between two, at a place between theirs. */
export function pointBetween(before: RunPoint, after: RunPoint, atM: number): RunPoint {
  if (before.atM === after.atM) return before;
  return { ...levelAt(before, after, atM), ...wayPointBetween(before, after, atM) };
}

/** The points at a place, in order: those there, else one between its neighbours. */
export const pointsAt = ({ points }: Run, atM: number): readonly [RunPoint, ...RunPoint[]] =>
  pointsThere(points, atM, pointBetween);
