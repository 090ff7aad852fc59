import { createRequire } from 'node:module';
import type OpeningHoursText from 'opening_hours';
import type { OpeningHours } from '../app/ports.ts';
import type { OpeningAnswer } from '../core/input/opening-hours.ts';

/** How far past the latest arrival the next opening is looked for, days (ours). */
const LOOK_AHEAD_DAYS = 14;
/** Texts kept parsed; a text costs about 0.2 ms to parse. */
const MOST_KEPT = 2000;
/** OpenStreetMap allows 255 characters in a value; other sources may hold longer ones, which the package may take long over. */
const LONGEST_TEXT = 255;
/**
 * No year and no hour has so many figures; the package counts on from such a year for ever. Of 9,000 texts of its own words within
 * these bounds none took half a second.
 */
const TOO_MANY_FIGURES = /\d{5}/;
const MINUTE_MS = 60_000;

const NO_HOLIDAYS = 'public and school holidays are not reckoned';
const unknown = (comment: string, unreadable = false): OpeningAnswer => ({
  open: null,
  waitHours: null,
  opens: null,
  comment,
  unreadable,
});

/**
 * Opening hours by the package opening_hours, which implements the specification of the OpenStreetMap wiki
 * (Key:opening_hours/specification). Local clock throughout: the process's own time zone makes no difference. Hours
 * that go by the sun are unknown, as legal time is not known here; rules for holidays are left out, and that is said,
 * as the country is not known.
 */
export const openingHours: OpeningHours = (text, _place, earliest, latest) => {
  const key = `${earliest} ${latest} ${text}`;
  const known = answers.get(key);
  if (known !== undefined) return known;
  const answer = answerFor(text, earliest, latest);
  if (answers.size >= MOST_KEPT) answers.clear();
  answers.set(key, answer);
  return answer;
};

const answers = new Map<string, OpeningAnswer>();

function answerFor(text: string, earliest: string, latest: string): OpeningAnswer {
  if (text.length > LONGEST_TEXT || TOO_MANY_FIGURES.test(text)) return unknown('they cannot be read', true);
  if (/\b(sunrise|sunset|dawn|dusk)\b/i.test(text)) return unknown('they go by the sun');
  const plainText = withoutHolidays(text);
  if (plainText === null) return unknown('they speak of holidays only');
  const hours = hoursOf(plainText);
  if (hours === null) return unknown('they cannot be read', true);
  const from = dateOf(earliest);
  const to = dateOf(latest);
  const until = new Date(to);
  until.setDate(until.getDate() + LOOK_AHEAD_DAYS);
  const spans = openSpans(hours, from, until);
  if (spans === null) return unknown('they cannot be read', true);
  const answer = answerFrom(spans, {
    fromMin: minutesOf(from),
    toMin: minutesOf(to),
    untilMin: minutesOf(until),
  });
  if (plainText === text) return answer;
  return { ...answer, comment: answer.comment === null ? NO_HOLIDAYS : `${answer.comment}; ${NO_HOLIDAYS}` };
}

/** A stretch of time in which it is open, or may be; minutes of the local clock since 1970. */
interface OpenSpan {
  fromMin: number;
  toMin: number;
  isUnknown: boolean;
  comment: string | null;
}

/** When somebody may arrive, and how far ahead the hours are known; minutes of the local clock since 1970. */
interface ArrivalWindow {
  fromMin: number;
  toMin: number;
  untilMin: number;
}

/** The stretches between two times; null where the package finds that it cannot tell. */
function openSpans(hours: OpeningHoursText, from: Date, until: Date): OpenSpan[] | null {
  try {
    return silently(() => hours.getOpenIntervals(from, until)).map(([start, end, isUnknown, comment]) => ({
      fromMin: minutesOf(start),
      toMin: minutesOf(end),
      isUnknown,
      comment: comment === undefined || comment.trim() === '' ? null : comment.trim(),
    }));
  } catch {
    return null;
  }
}

function answerFrom(spans: readonly OpenSpan[], window: ArrivalWindow): OpeningAnswer {
  const within = spans.filter(({ fromMin, toMin }) => fromMin <= window.toMin && toMin > window.fromMin);
  const comment = within.find((span) => span.comment !== null)?.comment ?? null;
  const opens = spans.some((span) => !span.isUnknown) ? true : spans.length > 0 ? null : false;
  const waits = waitsOf(spans, window);
  if (waits.length > 0) {
    const waitHours = waits.includes(null)
      ? null
      : Math.max(0, ...waits.map((minutes) => (minutes ?? 0) / 60));
    return { open: false, waitHours, opens, comment, unreadable: false };
  }
  const open = within.some((span) => span.isUnknown) ? null : true;
  return { open, waitHours: open === null ? null : 0, opens, comment, unreadable: false };
}

/** Minutes that somebody waits who comes just as it shuts, for each time that it does; null where the hours do not tell. */
function waitsOf(spans: readonly OpenSpan[], { fromMin, toMin, untilMin }: ArrivalWindow): (number | null)[] {
  const horizon: OpenSpan = { fromMin: untilMin, toMin: untilMin, isUnknown: true, comment: null };
  const waits: (number | null)[] = [];
  let reachedMin = fromMin;
  for (const next of [...spans, horizon]) {
    if (reachedMin > toMin) break;
    if (next.fromMin > reachedMin) waits.push(next.isUnknown ? null : next.fromMin - reachedMin);
    reachedMin = Math.max(reachedMin, next.toMin);
  }
  return waits;
}

/** Whether a rule is for holidays and no day of the week beside them; the whole list of them is looked through. */
const isHolidaysOnly = (rule: string): boolean =>
  /^\s*(PH|SH)(\s*,\s*(PH|SH))*(?!\s*,\s*(PH|SH)\b|\s*,?\s*(Mo|Tu|We|Th|Fr|Sa|Su)\b)/.test(rule);

/** The text without its rules for holidays; null where nothing else is left or they cannot be taken out. */
function withoutHolidays(text: string): string | null {
  const bare = text.replace(/"[^"]*"/g, '');
  if (!/\b(PH|SH)\b/.test(bare)) return text;
  const rest = text
    .replace(/,\s*(PH|SH)(\s*,\s*(PH|SH))*\s+(off|closed)\b/g, '')
    .split(';')
    .filter((rule) => !isHolidaysOnly(rule))
    .join(';')
    .replace(/,\s*(PH|SH)\b/g, '')
    .replace(/\b(PH|SH)\s*,\s*/g, '')
    .trim();
  return rest === '' || /\b(PH|SH)\b/.test(rest.replace(/"[^"]*"/g, '')) ? null : rest;
}

let openingHoursPackage: typeof OpeningHoursText | null = null;

/** Keeps the package from writing what anybody tagged to the terminal of the server. */
function silently<T>(ask: () => T): T {
  const { error, warn } = console;
  console.error = console.warn = () => {};
  try {
    return ask();
  } finally {
    Object.assign(console, { error, warn });
  }
}

/** The package, loaded at its first use: 20 MB of memory and 0.1 s that most runs can do without. */
function reader(): typeof OpeningHoursText {
  openingHoursPackage ??= createRequire(import.meta.url)('opening_hours') as typeof OpeningHoursText;
  return openingHoursPackage;
}

const hoursByText = new Map<string, OpeningHoursText | null>();

/** The text parsed by the package's defaults, which take whole ranges of time; null where it cannot be. The package throws texts, not errors. */
function hoursOf(text: string): OpeningHoursText | null {
  const known = hoursByText.get(text);
  if (known !== undefined) return known;
  let hours: OpeningHoursText | null = null;
  try {
    hours = silently(() => new (reader())(text));
  } catch {
    // Tags hold what anybody wrote: whatever the package makes of it, the text is not readable.
  }
  if (hoursByText.size >= MOST_KEPT) hoursByText.clear();
  hoursByText.set(text, hours);
  return hours;
}

/** "2027-05-03T14:05" as the process's own clock would show it. */
function dateOf(local: string): Date {
  const [year = NaN, month = NaN, day = NaN, hour = NaN, minute = NaN] = local.split(/[-T:]/).map(Number);
  return new Date(year, month - 1, day, hour, minute);
}

/** Minutes that the clock shows, so that no change of the process's own clock counts. */
const minutesOf = (date: Date): number =>
  Date.UTC(date.getFullYear(), date.getMonth(), date.getDate(), date.getHours(), date.getMinutes()) /
  MINUTE_MS;
