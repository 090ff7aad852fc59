import type { Arrival } from '../../contract/pace.ts';
import type { OpeningHoursReader } from '../input/opening-hours.ts';
import type { Tags } from '../input/sources.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { SupplyReason } from '../phrases/supply.ts';
import type { Passing } from '../supply/points/passing.ts';
import { openingOf } from '../supply/tags/hours.ts';
import type { PacePlan } from './pace-plan.ts';
import { timeSpan } from './time-there.ts';

/** What arrivals are judged on; without a reader of opening hours none is. */
export interface ArrivalFacts {
  plan: PacePlan;
  tagsOf: (passing: Passing) => Tags | undefined;
  read: OpeningHoursReader | undefined;
  /** Ids of supplies for which the user told how long one waits. */
  waitsTold?: ReadonlySet<string> | undefined;
  /** What waiting takes. */
  waterLPerDay: number;
}

/**
 * Passings with the time of arrival, and what their mapped hours say of it: at the fast pace at the earliest, at the
 * slow one at the latest. Detours to other supplies on the way are left out. A supply that is shut on arrival still
 * counts: it means waiting, or coming earlier, and a caution says so. One that does not open within the days looked
 * ahead does not count, unless the user told how long one waits.
 */
export function withArrivals(
  passings: readonly Passing[],
  { plan, tagsOf, read, waitsTold, waterLPerDay }: ArrivalFacts,
): { passings: Passing[]; cautions: Caution[] } {
  const cautions: Caution[] = [];
  const arriving = passings.map((passing): Passing => {
    const text = openingOf(tagsOf(passing) ?? {}, passing.commodity)?.text;
    const span = timeSpan(plan, passing.atM);
    if (span === null || read === undefined || text === undefined) return { ...passing, arrival: null };
    const { earliest, latest } = span;
    const answer = read(text, { lon: passing.lon, lat: passing.lat }, earliest, latest);
    const arrival: Arrival = {
      earliest,
      latest,
      open: answer.open,
      waitHours: answer.waitHours,
      text: answer.comment,
    };
    if (passing.counts) {
      const unread = answer.unreadable ? text : null;
      const caution = cautionOf(passing, arrival, unread, waterLPerDay);
      if (caution !== null) cautions.push({ ...caution, fromM: passing.atM, toM: passing.atM });
    }
    return { ...(isWaitTold(passing, waitsTold) ? passing : whereItOpens(passing, arrival, text)), arrival };
  });
  return { passings: arriving, cautions };
}

const isWaitTold = ({ id, alsoIds }: Passing, told: ReadonlySet<string> | undefined): boolean =>
  told !== undefined && [id, ...alsoIds].some((one) => told.has(one));

/** The passing as it is; as one that does not count, where its hours hold no opening for somebody who comes then. */
function whereItOpens(
  passing: Passing,
  { open, waitHours, earliest, latest }: Arrival,
  hours: string,
): Passing {
  if (!passing.counts || open !== false || waitHours !== null) return passing;
  const reason: SupplyReason = {
    code: 'no-opening-found',
    facts: { findings: [{ hours, earliest, latest }] },
  };
  return { ...passing, evidence: 'doubtful', counts: false, reasons: [reason, ...passing.reasons] };
}

function cautionOf(
  passing: Passing,
  { earliest, latest, open, waitHours, text }: Arrival,
  unreadable: string | null,
  waterLPerDay: number,
): Caution | null {
  const name = passing.name ?? passing.kind;
  if (unreadable !== null) {
    return { code: 'opening-hours-unread', facts: { name, hours: unreadable } };
  }
  if (open === null) {
    return { code: 'opening-hours-unknown', facts: { name, earliest, latest, why: text } };
  }
  if (open) return null;
  const wait = waitHours === null ? null : { hours: waitHours, waterL: (waitHours / 24) * waterLPerDay };
  return { code: 'shut-on-arrival', facts: { name, earliest, latest, wait } };
}
