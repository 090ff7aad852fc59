import type { Profile } from './profile.ts';

/**
 * Where in its days a drive is: what tells when a night falls on a way that the plan of days does not have. Each day of
 * 24 hours begins with driving; when its hours are used up the next morning is waited for.
 */
export interface DayClock {
  /** Of a day; the fewest of all surfaces on the route, so that no night is taken for shorter than it is. */
  readonly hoursPerDay: number;
  /** Days of driving, summed along the route: nights and stays are no part of it. */
  readonly drivenDays: Profile;
  /** Share of the day's driving that is used up on reaching a place, 0 to 1; falls where a morning comes. */
  readonly usedShare: Profile;
  /** Litres of a night, from the end of a day's hours to the next morning. */
  readonly nightL: number;
}

/** Less of a day than this, some ten microseconds of driving, is float noise. */
const NOISE_DAYS = 1e-9;

/** The first whole number of days of driving that is not below so many. */
export const wholeDaysFrom = (days: number): number => Math.max(1, Math.ceil(days - NOISE_DAYS));

/** Nights over so many days of driving from a morning: one each time there is more to drive than the day has hours. */
export const nightsOver = (days: number): number => wholeDaysFrom(days) - 1;
