import { pairsOf } from '../../lists/pairs.ts';
import type { Course, Edge } from './course.ts';
import { nightsOver, wholeDaysFrom } from './day-clock.ts';
import type { Detour } from './levels.ts';
import { amountBetween, breaksInside, jumpAt, type Profile, sumBefore } from './profile.ts';
import { drivingDaysBefore, HOURS_PER_DAY } from './standing.ts';

/**
 * Litres from a place of the route back to the supply behind, its detour included, reserve not: driving, and every night
 * that falls because the hours of a day are used up, from the morning of the day that is at hand there. `besidesDays` are
 * days of driving that go on other than the route. What the place itself has, a night or a stay, is still to come.
 */
export function wayBackL(course: Course, from: Edge, atM: number, besidesDays: number): number {
  const drivingL = amountBetween(course.litres.home, from.atM, atM) + from.detourM * course.off.homeLitres;
  const { clock } = course;
  if (clock === null) return drivingL;
  const days = sumBefore(clock.usedShare, atM) + amountBetween(clock.drivenDays, from.atM, atM) + besidesDays;
  return drivingL + nightsOver(days) * clock.nightL;
}

/** Days of driving that a supply takes beside the route: its detour, out and back, waiting and filling there. */
export const besidesDaysAt = (course: Course, from: Edge): number =>
  course.clock === null
    ? 0
    : 2 * from.detourM * course.off.days + drivingDaysBefore(course, course.clock, from);

/** The same of halts on the way. */
export const besidesDaysVia = ({ clock, off }: Course, detours: readonly Detour[]): number =>
  clock === null
    ? 0
    : detours.reduce(
        (sum, { bothWaysM, drivingDays }) =>
          sum + (drivingDays ?? (bothWaysM * off.days * HOURS_PER_DAY) / clock.hoursPerDay),
        0,
      );

/** A way that may be gone back over. */
interface WayOut {
  readonly course: Course;
  readonly from: Edge;
  readonly toM: number;
  /** Halts of the other commodity on the way out. */
  readonly detours?: readonly Detour[];
}

/**
 * `wayBackL` from every place of a way: straight between its places; two entries at one place are a fall where a
 * morning comes and a rise where one night more falls on the way. The profile begins at `from`.
 */
export function wayBackAlong({ course, from, toM, detours = [] }: WayOut): Profile {
  const { home } = course.litres;
  const { clock } = course;
  const homeL = (atM: number) => amountBetween(home, from.atM, atM) + from.detourM * course.off.homeLitres;
  const atM: number[] = [];
  const sum: number[] = [];
  const mark = (placeM: number, nights: number) => {
    atM.push(placeM);
    sum.push(homeL(placeM) + nights * (clock?.nightL ?? 0));
  };
  const places = placesOf({ course, from, toM, detours });
  if (clock === null) {
    for (const place of places) mark(place, 0);
    return profileFrom(atM, sum);
  }
  let days = sumBefore(clock.usedShare, from.atM) + besidesDaysAt(course, from);
  mark(from.atM, nightsOver(days));
  for (const [fromM, nextM] of pairsOf(places)) {
    const halts = detours.filter((halt) => halt.atM === fromM);
    days += jumpAt(clock.usedShare, fromM) + besidesDaysVia(course, halts);
    mark(fromM, nightsOver(days));
    const before = days;
    days +=
      sumBefore(clock.usedShare, nextM) -
      (sumBefore(clock.usedShare, fromM) + jumpAt(clock.usedShare, fromM)) +
      amountBetween(clock.drivenDays, fromM, nextM);
    for (let used = wholeDaysFrom(before); used < wholeDaysFrom(days); used += 1) {
      const placeM = fromM + Math.max(0, (used - before) / (days - before)) * (nextM - fromM);
      mark(placeM, nightsOver(used));
      mark(placeM, nightsOver(used) + 1);
    }
    mark(nextM, nightsOver(days));
  }
  return profileFrom(atM, sum);
}

const profileFrom = (atM: readonly number[], sum: readonly number[]): Profile => ({
  atM: Float64Array.from(atM),
  sum: Float64Array.from(sum),
});

/** Every place of a way where what the way back takes bends or jumps, in order, ends included. */
function placesOf({ course: { litres, clock }, from, toM, detours = [] }: WayOut): number[] {
  const profiles = [litres.home, ...(clock === null ? [] : [clock.drivenDays, clock.usedShare])];
  const inside = profiles.flatMap((profile) => breaksInside(profile, from.atM, toM));
  const halts = detours.map(({ atM }) => atM).filter((atM) => atM > from.atM && atM < toM);
  return [...new Set([from.atM, ...inside, ...halts, toM])].sort((a, b) => a - b);
}
