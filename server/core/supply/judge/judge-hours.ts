import type { Commodity } from '../../../contract/common.ts';
import type { OpeningHoursReader } from '../../input/opening-hours.ts';
import type { Tags } from '../../input/sources.ts';
import { goesByDates, type Hours, hoursOf, withoutSun } from '../tags/hours.ts';
import { ONE_DOWN } from '../tags/reasons.ts';
import type { Judgement } from './judgement.ts';

/** What hours are judged with. */
export interface HoursFacts {
  readonly read: OpeningHoursReader;
  /** Local times between which it is reached, "2027-05-03T14:05"; null without a date of departure. */
  readonly window: { readonly earliest: string; readonly latest: string } | null;
  /** ISO date from which on a supply that never opens is looked for. */
  readonly from: string;
}

/** An object and the commodity that it is judged for; `fuels`: the rig's own keys. */
export interface HoursQuestion {
  readonly tags: Tags;
  readonly commodity: Commodity;
  readonly place: { lon: number; lat: number };
  readonly fuels: readonly string[];
}

/** Shut for longer than this, a supply is one of a season, hours (as far as arrivals look ahead, ours). */
const SEASON_H = 14 * 24;
/** A year and a month: every month comes by, days. */
const YEAR_DAYS = 396;
const WEEK_DAYS = 7;

/**
 * What hours and conditions say, as far as they shut a supply for good, or on the days on which it is reached and two
 * weeks on. Shorter waits are the arrival's matter.
 */
export function judgeHours(question: HoursQuestion, facts: HoursFacts, judgement: Judgement): void {
  const { tags, commodity, fuels } = question;
  for (const hours of hoursOf(tags, commodity, fuels)) judgeText(hours, question, facts, judgement);
}

function judgeText(
  { text: given, tag }: Hours,
  { place }: HoursQuestion,
  { read, window, from }: HoursFacts,
  judgement: Judgement,
): void {
  const text = withoutSun(given);
  const byDates = goesByDates(text);
  const year = read(
    text,
    place,
    `${from}T00:00`,
    `${daysAfter(from, byDates ? YEAR_DAYS : WEEK_DAYS)}T00:00`,
  );
  const down = ONE_DOWN[judgement.evidence];
  if (year.unreadable) {
    judgement.add('hours-unread', { hours: tag, unreadable: true }, down);
  } else if (year.opens === false) {
    judgement.against('closed', { tags: [tag] });
  } else if (byDates && window !== null) {
    const reached = read(text, place, window.earliest, window.latest);
    if (reached.open === false && reached.waitHours === null) {
      judgement.against('out-of-season', { season: tag, ...daysOf(window) });
    } else if (reached.opens !== true) {
      judgement.add('hours-unread', { hours: tag, unreadable: false }, down);
    }
  } else if (year.opens === null) {
    judgement.add('hours-unread', { hours: tag, unreadable: false }, down);
  } else if (byDates && (year.waitHours === null || year.waitHours > SEASON_H)) {
    judgement.add('season-unknown', { season: tag, dated: false }, down);
  }
}

/** The days of a window; `to` where there are several. */
function daysOf({ earliest, latest }: { earliest: string; latest: string }): {
  from: string;
  to: string | null;
} {
  const [from, to] = [earliest.slice(0, 10), latest.slice(0, 10)];
  return { from, to: to === from ? null : to };
}

const daysAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
