import type { Course, Edge } from './course.ts';

const HOURS_PER_DAY = 24;

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
