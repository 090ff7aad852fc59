import type { Commodity } from '../../../contract/common.ts';
import type { Confirmation } from '../../../contract/notes.ts';
import { type FoundReason, found } from '../tags/reasons.ts';
import { saidBy } from '../tags/said-by.ts';

export type { Confirmation } from '../../../contract/notes.ts';

/** Days for which a confirmation holds where no departure is told (ours). */
const CONFIRMATION_DAYS: Record<Commodity, number> = { fuel: 30, water: 14 };
/** Made no more than so many days before the departure, a confirmation is one for that journey (ours). */
export const BEFORE_DEPARTURE_DAYS: Record<Commodity, number> = { fuel: 60, water: 30 };
/** It then holds for so many days after the departure (ours). */
const AFTER_DEPARTURE_DAYS = 30;
/** Made earlier than this before the departure it is as old as tags that are no longer believed: three years (ours). */
const FORGOTTEN_DAYS = 3 * 365;

const DAY_MS = 86_400_000;
const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / DAY_MS;
const dayAfter = (day: string, days: number): string =>
  new Date(Date.parse(day) + days * DAY_MS).toISOString().slice(0, 10);

/** The days for which reports are judged, all ISO dates. */
export interface ReportDays {
  /** Null where none is told. */
  readonly departure: string | null;
  /** Null where nobody knows it; stands in where there is no departure. */
  readonly today: string | null;
  /** On which the supply is come to; left out: on the day of departure. */
  readonly reached?: { readonly first: string; readonly last: string };
}

/** From when to when a confirmation holds, and whether it has to be confirmed again before leaving, from what day on. */
export interface Hold {
  readonly from: string;
  readonly until: string;
  readonly again: string | null;
  /** Days of its term; null where the user, or the departure, says until when. */
  readonly days: number | null;
}

/**
 * How long a report that a supply works holds. As the user says; else, with a departure, until 30 days after it; a report
 * made long before the departure holds as well, but is to be confirmed again. Without a departure for a term of days.
 */
export function holdOf(report: Confirmation, commodity: Commodity, departure: string | null): Hold {
  const { on, from = on, until } = report;
  if (until !== undefined) return { from, until, again: null, days: null };
  const days = CONFIRMATION_DAYS[commodity];
  if (departure === null) return { from, until: dayAfter(on, days), again: null, days };
  const before = daysBetween(on, departure);
  if (before > FORGOTTEN_DAYS)
    return { from, until: dayAfter(on, FORGOTTEN_DAYS), again: null, days: FORGOTTEN_DAYS };
  const earliest = dayAfter(departure, -BEFORE_DEPARTURE_DAYS[commodity]);
  return {
    from,
    // One made on the way holds for its own term at least.
    until: dayAfter(on, Math.max(days, before + AFTER_DEPARTURE_DAYS)),
    again: on < earliest ? earliest : null,
    days: null,
  };
}

export interface Report {
  /** `works`: confirmed and held. `out`: reported not to work. `none`: the tags decide. */
  readonly state: 'works' | 'out' | 'none';
  readonly reasons: FoundReason[];
}

/**
 * What the user's own reports say of a supply for a journey: the one rule, for gaps, plans, what-ifs and lists.
 * The newest report stands; of two on one day, the one that it does not work. "Does not work" has no end but the one that
 * is told with it, and holds even when dated after the day judged for. "Works" holds as `holdOf` says, and is not used
 * when dated after the day judged for.
 */
export function reportOn(reports: readonly Confirmation[], commodity: Commodity, days: ReportDays): Report {
  const ours = reports.filter((report) => report.commodity === undefined || report.commodity === commodity);
  const ahead = ours.filter((report) => report.works && isAhead(report, days));
  const works = newestOf(ours.filter((report) => report.works && !isAhead(report, days)));
  const out = newestOf(ours.filter((report) => !report.works && isStillOut(report, days)));
  const { state, reasons } = newerOf(works, out, commodity, days);
  return { state, reasons: [...reasons, ...ahead.map(({ on }) => found('confirmation-ahead', { on }))] };
}

/** Of several on one day the one that stands last. */
const newestOf = (reports: readonly Confirmation[]): Confirmation | undefined =>
  reports.reduce<Confirmation | undefined>(
    (newest, report) => (newest === undefined || report.on >= newest.on ? report : newest),
    undefined,
  );

/** Dated after the departure, and not made on the way; without a departure after today. */
function isAhead({ on }: Confirmation, { departure, today, reached }: ReportDays): boolean {
  const judged = departure ?? today;
  if (judged === null || on <= judged) return false;
  const madeOnTheWay = today !== null && on <= today && reached !== undefined && on <= reached.last;
  return !madeOnTheWay;
}

/** A report with a last day is past where the supply is only come to later; without one, or a day to judge for, it stands. */
function isStillOut({ until }: Confirmation, { departure, today, reached }: ReportDays): boolean {
  const first = reached?.first ?? departure ?? today;
  return until === undefined || first === null || first <= until;
}

function newerOf(
  works: Confirmation | undefined,
  out: Confirmation | undefined,
  commodity: Commodity,
  days: ReportDays,
): Report {
  if (out !== undefined && (works === undefined || out.on >= works.on)) {
    const until = out.until === undefined ? {} : { until: out.until };
    return { state: 'out', reasons: [found('reported-out', { on: out.on, ...saidBy(out), ...until })] };
  }
  return works === undefined ? { state: 'none', reasons: [] } : worksReport(works, commodity, days);
}

function worksReport(works: Confirmation, commodity: Commodity, days: ReportDays): Report {
  const { on } = works;
  const { departure, today, reached } = days;
  const judged = departure ?? today;
  if (judged === null) return { state: 'none', reasons: [found('confirmation-undated', { on })] };
  const hold = holdOf(works, commodity, departure);
  const [first, last] = [reached?.first ?? judged, reached?.last ?? judged];
  if (last > hold.until) {
    const term = hold.days === null ? { until: hold.until } : { days: hold.days };
    return { state: 'none', reasons: [found('confirmation-expired', { on, ...term })] };
  }
  // A term that the user gives in days to come; what was asked holds from the day of asking.
  if (works.from !== undefined && first < hold.from)
    return { state: 'none', reasons: [found('confirmation-not-yet', { on, from: hold.from })] };
  const again = hold.again === null ? [] : [found('confirm-again', { on, from: hold.again })];
  return { state: 'works', reasons: [found('confirmed', { on, ...saidBy(works) }), ...again] };
}
