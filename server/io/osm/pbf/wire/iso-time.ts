const DAY_MS = 86_400_000;
/** The greatest time that a Date can hold (ECMAScript 21.4.1.1). */
const GREATEST_MS = 8.64e15;

const TWO_DIGITS = Array.from({ length: 60 }, (_, number) => String(number).padStart(2, '0'));

/** Days already written out: edits fall on few days, and Date is slow. */
const days = new Map<number, string>();
const MOST_DAYS = 20_000;

function dayText(day: number): string {
  let text = days.get(day);
  if (text === undefined) {
    text = new Date(day * DAY_MS).toISOString().replace(/T.*/, '');
    if (days.size < MOST_DAYS) days.set(day, text);
  }
  return text;
}

/**
 * ISO 8601 text, UTC, of milliseconds since 1970; undefined when the time is not set (0) or beyond what a date can be.
 * Fractions of a second are left off.
 */
export function isoTime(milliseconds: number): string | undefined {
  if (!(milliseconds > 0 && milliseconds <= GREATEST_MS)) return undefined;
  const day = Math.floor(milliseconds / DAY_MS);
  const seconds = Math.floor((milliseconds - day * DAY_MS) / 1000);
  const hour = Math.floor(seconds / 3600);
  const minute = Math.floor(seconds / 60) % 60;
  return `${dayText(day)}T${TWO_DIGITS[hour]}:${TWO_DIGITS[minute]}:${TWO_DIGITS[seconds % 60]}Z`;
}
