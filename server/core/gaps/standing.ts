import type { Course, Edge } from './course.ts';
import type { DayClock } from './day-clock.ts';

export const HOURS_PER_DAY = 24;

/** Litres that go in a day of standing: all water, or as much fuel as the rig tells for a day and a night. */
export function standingLPerDay({ commodity, rig }: Pick<Course, 'commodity' | 'rig'>): number {
  if (commodity === 'water') return rig.water.litresPerDay.high;
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

/**
 * Days of driving that standing takes away, of a day whose hours are used up to a share. Whole days leave the day at hand
 * as it was; other hours are hours of driving less, up to all that are left.
 */
export const drivingDaysOfStanding = (clock: DayClock, days: number, usedShare: number): number =>
  Math.min(Math.max(0, 1 - usedShare), hoursOfStanding(days % 1) / clock.hoursPerDay);
