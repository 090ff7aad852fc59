import { mostWaterPerDay } from '../../rig/rig.ts';
import type { Course, Edge } from './course.ts';
import { type DayClock, nightsOver } from './day-clock.ts';
import { sumBefore } from './profile.ts';

export const HOURS_PER_DAY = 24;

/** Litres that go in a day of standing: all water, or as much fuel as the rig tells for a day and a night. */
export function standingLPerDay({ commodity, rig }: Pick<Course, 'commodity' | 'rig'>): number {
  if (commodity === 'water') return mostWaterPerDay(rig);
  const { perHour, hours } = rig.fuel.model;
  return (
    perHour.idling * hours.idlingPerDay +
    perHour.airConditioning * hours.airConditioningPerDay +
    perHour.heater * hours.heaterPerNight
  );
}

/** Days of standing at both ends of a way: filling where it begins, waiting where it ends. */
export const standingDays = (from: Edge, to: Edge): number => (from.fillDays ?? 0) + (to.waitDays ?? 0);

/** Days that hours of standing take: the clock goes on for 24 of them in a day, however few are driven. */
export const daysOfStanding = (hours: number): number => hours / HOURS_PER_DAY;

/** The same the other way round. */
export const hoursOfStanding = (days: number): number => days * HOURS_PER_DAY;

/** Litres that go while it is filled where a way begins: none of water where the supply gives all that is used. */
export const fillingL = (course: Course, { fillDays = 0, givesAll = false }: Edge): number =>
  course.commodity === 'water' && givesAll ? 0 : fillDays * standingLPerDay(course);

/**
 * Days of driving that standing takes away, of a day whose hours are used up to a share. Whole days leave the day at hand
 * as it was; other hours are hours of driving less, up to all that are left.
 */
export const drivingDaysOfStanding = (clock: DayClock, days: number, usedShare: number): number =>
  Math.min(Math.max(0, 1 - usedShare), hoursOfStanding(days % 1) / clock.hoursPerDay);

/**
 * The same of waiting and filling where a way begins. Where the hours of the day end meanwhile at a water that gives all,
 * the night is spent there, and the way begins in the morning: then there is as much driving more, told as less than
 * nothing.
 */
export function drivingDaysBefore(course: Course, clock: DayClock, from: Edge): number {
  const days = ((from.waitDays ?? 0) + (from.fillDays ?? 0)) % 1;
  if (days === 0) return 0;
  const usedShare = sumBefore(clock.usedShare, from.atM);
  return endsTheDay(course, clock, from, from.fillDays) || staysNight(course, from)
    ? -usedShare
    : drivingDaysOfStanding(clock, days, usedShare);
}

/** Whether the hours of the day end while it is filled at a water that gives all. */
function endsTheDay({ commodity }: Course, clock: DayClock, from: Edge, fillDays = 0): boolean {
  if (commodity !== 'water' || from.givesAll !== true) return false;
  const hours = hoursOfStanding(((from.waitDays ?? 0) + fillDays) % 1);
  return sumBefore(clock.usedShare, from.atM) * clock.hoursPerDay + hours >= clock.hoursPerDay;
}

/** Whether the night is spent at a water although its filling ends before: the way was chosen so. */
export const staysNight = (course: Course, from: Edge): boolean =>
  course.clock !== null &&
  from.chosenFillDays !== undefined &&
  (isWholeDay(course, from) || endsTheDay(course, course.clock, from, from.chosenFillDays)) &&
  !endsTheDay(course, course.clock, from, from.fillDays);

/** A filling chosen for a day or more has a night in it, whatever the hour at which it begins. */
const isWholeDay = ({ commodity }: Course, { givesAll, waitDays = 0, chosenFillDays = 0 }: Edge): boolean =>
  commodity === 'water' && givesAll === true && waitDays + chosenFillDays >= 1;

/** Nights of a way that the plan of days does not have, because standing where it begins takes hours of driving. */
export function pushedNights(course: Course, from: Edge, to: Edge): number {
  const { clock } = course;
  if (clock === null) return 0;
  const daysBefore = drivingDaysBefore(course, clock, from);
  return daysBefore <= 0 ? 0 : nightsOver(sumBefore(clock.usedShare, to.atM) + daysBefore);
}

/** Days and litres of a night on the way. */
export const nightDays = ({ clock }: Course): number =>
  clock === null ? 0 : daysOfStanding(HOURS_PER_DAY - clock.hoursPerDay);
export const nightL = ({ clock }: Course): number => clock?.nightL ?? 0;
