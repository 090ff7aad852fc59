import type { Tags } from '../../input/sources.ts';

/** Keys that hold from when or until when an object is there (OSM wiki: Key:start_date, Key:end_date, Key:opening_date). */
export const DATE_KEYS = ['start_date', 'end_date', 'opening_date'] as const;

/**
 * What dates of beginning and end say on a day. `gone`: ended, or yet to come. `unclear`: the date cannot be read.
 */
interface DateFinding {
  readonly key: (typeof DATE_KEYS)[number];
  readonly state: 'gone' | 'unclear';
}

/** The first and the last day of a date, a month or a year, ISO; null where the text is none of them. */
function daysOf(text: string): { first: string; last: string } | null {
  const match = /^(\d{4})(?:-(\d{1,2}))?(?:-(\d{1,2}))?$/.exec(text.trim());
  if (match === null) return null;
  const [, year = '', month, day] = match;
  const two = (figures: string) => figures.padStart(2, '0');
  return {
    first: `${year}-${two(month ?? '1')}-${two(day ?? '1')}`,
    last: `${year}-${two(month ?? '12')}-${two(day ?? '31')}`,
  };
}

/**
 * What the tags say of the day on which a supply is wanted (ISO date). Of a month or a year the end is taken at its
 * first day and the opening at its last, so that a supply is not there on a day on which it may not be; an object that
 * is mapped as begun in a year was there when it was mapped.
 */
export function datesAgainst(tags: Tags, on: string): DateFinding[] {
  return DATE_KEYS.flatMap((key): DateFinding[] => {
    const text = tags[key]?.trim();
    if (text === undefined || text === '') return [];
    const days = daysOf(text);
    if (days !== null) return IS_GONE[key](days, on) ? [{ key, state: 'gone' }] : [];
    // Words like "1970s" or "C19" for a beginning say that it is past; those for an end say that it may be.
    return key === 'start_date' ? [] : [{ key, state: 'unclear' }];
  });
}

const IS_GONE: Record<DateFinding['key'], (days: { first: string; last: string }, on: string) => boolean> = {
  start_date: ({ first }, on) => first > on,
  end_date: ({ first }, on) => first <= on,
  opening_date: ({ last }, on) => last > on,
};
