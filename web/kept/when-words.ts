import { locale } from '../language/language.ts';

const clock = new Intl.DateTimeFormat(locale, { hour: '2-digit', minute: '2-digit' });
const day = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long' });
const dayOfYear = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', year: 'numeric' });

/** A moment (ISO) as one says it: "14:05" of today, "3 May" of this year, else with the year. By the browser's own clock. */
export function whenWords(iso: string, now: Date): string {
  const at = new Date(iso);
  if (Number.isNaN(at.getTime())) return '';
  if (at.toDateString() === now.toDateString()) return clock.format(at);
  return at.getFullYear() === now.getFullYear() ? day.format(at) : dayOfYear.format(at);
}
