import { dateLocale } from '../language/language.ts';
import { t } from '../language/t.ts';

const weekday = new Intl.DateTimeFormat(dateLocale, { weekday: 'short', timeZone: 'UTC' });
const month = new Intl.DateTimeFormat(dateLocale, { month: 'short', timeZone: 'UTC' });

/** The day on the reader's own calendar, YYYY-MM-DD: what is noted in the evening is not of tomorrow. */
export function today(now: Date = new Date()): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** "2027-05-03" as "Mon 3 May"; the text as it came where it is no date. */
export function formatDate(date: string): string {
  const at = new Date(`${date}T00:00:00Z`);
  if (Number.isNaN(at.getTime())) return date;
  return t`${weekday.format(at)}\u00a0${at.getUTCDate()}\u00a0${month.format(at)}`;
}

/** "2027-05-03T14:05", a local time without a zone, as "Mon 3 May 14:05". */
export const formatLocalTime = (time: string): string =>
  `${formatDate(time.slice(0, 10))} ${time.slice(11, 16)}`;

/** A local time, or a date alone. */
export const formatWhen = (when: string): string =>
  when.includes('T') ? formatLocalTime(when) : formatDate(when);

/** "Mon 3 May 10:05 to Mon 3 May 12:40"; one where both are the same. */
export const formatTimeSpan = ({ earliest, latest }: { earliest: string; latest: string }): string =>
  earliest === latest ? formatWhen(latest) : t`${formatWhen(earliest)} to ${formatWhen(latest)}`;

/** Hours of the day as a clock shows them: 7.5 is "07:30". */
export function clockOf(hours: number): string {
  const minutes = Math.round(hours * 60);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** "07:30" as hours of the day; null for what is no time of day. */
export function hoursOf(clock: string): number | null {
  const read = /^(\d{1,2}):(\d{2})$/.exec(clock);
  if (read === null) return null;
  const [hours, minutes] = [Number(read[1]), Number(read[2])];
  return hours < 24 && minutes < 60 ? hours + minutes / 60 : null;
}
