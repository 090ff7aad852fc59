import { sumBefore } from '../gaps/course/profile.ts';
import { dateAfter, localTime } from './clock.ts';
import type { PaceEnd } from './pace-on.ts';
import type { PacePlan } from './pace-plan.ts';

/** Local times of coming to a place, at the fast and at the slow pace. */
export interface TimeSpan {
  readonly earliest: string;
  readonly latest: string;
}

/**
 * When a place of the route is come to, at the fast and at the slow pace. Detours, and filling and waiting at supplies,
 * are left out: they depend on what is fetched.
 */
export interface TimeThere {
  /** Of the drive, from 1. */
  readonly firstDay: number;
  readonly lastDay: number;
  /** Local times where date and hour of departure are told, dates where the date alone is; null where neither. */
  readonly span: TimeSpan | null;
}

/** Local times of coming to a place; null where date or hour of departure is not told. */
export function timeSpan(plan: PacePlan, atM: number): TimeSpan | null {
  const { date, hour } = plan.departure;
  if (date === null || !plan.timed) return null;
  const at = (pace: PaceEnd) => localTime({ date, hour }, sumBefore(plan.schedules[pace].elapsedH, atM));
  return { earliest: at('fast'), latest: at('slow') };
}

/** Days, and times as far as they are told, of coming to a place. */
export function timeThere(plan: PacePlan, atM: number): TimeThere {
  const dayAt = (pace: PaceEnd) => Math.floor(sumBefore(plan.schedules[pace].elapsedH, atM) / 24);
  const [first, last] = [dayAt('fast'), dayAt('slow')];
  const { date } = plan.departure;
  const dates = date === null ? null : { earliest: dateAfter(date, first), latest: dateAfter(date, last) };
  return { firstDay: first + 1, lastDay: last + 1, span: timeSpan(plan, atM) ?? dates };
}
