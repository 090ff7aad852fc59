import type { Course, Edge } from './course.ts';

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

/** Days that hours of standing take: beyond whole days they go off the hours in which the vehicle would drive (ours). */
export function daysOfStanding(hours: number, hoursPerDay: number): number {
  const whole = Math.floor(hours / 24);
  return whole + Math.min(1, (hours - whole * 24) / hoursPerDay);
}
