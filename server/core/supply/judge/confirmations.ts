import type { Commodity } from '../../../contract/common.ts';
import type { TripFile } from '../../../contract/trip.ts';
import { type FoundReason, found } from '../tags/reasons.ts';

export type Confirmation = NonNullable<TripFile['confirmations']>[number];

/** Days for which a confirmation holds (ours). */
const CONFIRMATION_DAYS: Record<Commodity, number> = { fuel: 30, water: 14 };

export interface Report {
  /** `works`: confirmed and fresh. `out`: reported not to work. `none`: the tags decide. */
  state: 'works' | 'out' | 'none';
  reasons: FoundReason[];
}

const DAY_MS = 86_400_000;
const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / DAY_MS;

/**
 * What the user's own reports say of a supply on a day (ISO date; null when there is none).
 * The newest report stands; of two on one day, the one that it does not work. "Does not work" has no end, and holds
 * even when dated after the day judged for. "Works" holds for a term, and is not used when dated after that day.
 */
export function reportOn(reports: readonly Confirmation[], commodity: Commodity, on: string | null): Report {
  const ours = reports.filter((report) => report.commodity === undefined || report.commodity === commodity);
  const reasons: FoundReason[] = [];
  const newestOf = (works: boolean) =>
    ours
      .filter((report) => report.works === works && !(works && on !== null && report.on > on))
      .map((report) => report.on)
      .sort()
      .at(-1);
  for (const report of ours) {
    if (report.works && on !== null && report.on > on)
      reasons.push(found('confirmation-ahead', { on: report.on }));
  }
  const works = newestOf(true);
  const out = newestOf(false);
  if (out !== undefined && (works === undefined || out >= works)) {
    return { state: 'out', reasons: [found('reported-out', { on: out }), ...reasons] };
  }
  if (works === undefined) return { state: 'none', reasons };
  if (on === null)
    return { state: 'none', reasons: [found('confirmation-undated', { on: works }), ...reasons] };
  const days = CONFIRMATION_DAYS[commodity];
  if (daysBetween(works, on) > days) {
    return { state: 'none', reasons: [found('confirmation-expired', { on: works, days }), ...reasons] };
  }
  return { state: 'works', reasons: [found('confirmed', { on: works }), ...reasons] };
}
