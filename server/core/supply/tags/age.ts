import type { Tags } from '../../input/sources.ts';
import type { KnownKey } from './vocabulary.ts';

/** Tags older than this many years may no longer hold (ours). */
const STALE_YEARS = 3;

/** Keys that hold the day of a look on the spot. */
export const CHECK_KEYS = ['check_date', 'survey:date'] as const satisfies KnownKey[];

export interface Age {
  /** The newest day on which the tags were edited or checked, ISO date; null when none is known. */
  seenOn: string | null;
  stale: boolean;
  /** Tags whose day lies after the day judged for, and is not believed. */
  ahead: string[];
}

/** A whole ISO date; a month or a year alone is taken at its first day, the older reading. Null when it is neither. */
function asDate(text: string): string | null {
  const match = /^(\d{4})(?:-(0[1-9]|1[0-2]))?(?:-(0[1-9]|[12]\d|3[01]))?$/.exec(text.trim());
  return match === null ? null : `${match[1]}-${match[2] ?? '01'}-${match[3] ?? '01'}`;
}

/** The same day so many years before, as a text that compares like a date. */
const yearsBefore = (on: string, years: number): string =>
  `${String(Number(on.slice(0, 4)) - years).padStart(4, '0')}${on.slice(4)}`;

/**
 * How old the tags are on a day (ISO date). An edit after that day is fresh (an older trip is looked at again);
 * a check date after it, or after the map's own day, is a slip of the pen and ignored. The map's day (`mapOn`) stands
 * in only where neither edit nor check is known: a file made yesterday makes no old check new.
 */
export function ageOf(tags: Tags, editedAt: string | null, on: string, mapOn?: string): Age {
  const latest = mapOn === undefined || mapOn > on ? on : mapOn;
  const ahead: string[] = [];
  const seen: string[] = editedAt === null ? [] : [editedAt.slice(0, 10)];
  for (const key of CHECK_KEYS) {
    const date = tags[key] === undefined ? null : asDate(tags[key]);
    if (date === null) continue;
    if (date > latest) ahead.push(`${key}=${tags[key]}`);
    else seen.push(date);
  }
  const seenOn = seen.sort().at(-1) ?? mapOn ?? null;
  return { seenOn, stale: seenOn !== null && seenOn < yearsBefore(on, STALE_YEARS), ahead };
}
