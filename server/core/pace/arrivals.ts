import type { Passing } from '../../contract/analysis.ts';
import type { Caution } from '../../contract/common.ts';
import type { Arrival } from '../../contract/pace.ts';
import { sumBefore } from '../gaps/profile.ts';
import type { Tags } from '../input/sources.ts';
import { localTime } from './clock.ts';
import type { OpeningHoursReader } from './opening.ts';
import type { PacePlan } from './pace-plan.ts';

/**
 * Passings with the time of arrival, and what their mapped hours say of it: at the fast pace at the earliest, at the
 * slow one at the latest. Detours to other supplies on the way are left out. A supply that is shut on arrival still
 * counts: it means waiting, or coming earlier, and a caution says so.
 */
export function withArrivals(
  passings: readonly Passing[],
  plan: PacePlan,
  tagsOf: (passing: Passing) => Tags | undefined,
  read: OpeningHoursReader | undefined,
  waterLPerDay: number,
): { passings: Passing[]; cautions: Caution[] } {
  const { date, hour } = plan.departure;
  const cautions: Caution[] = [];
  const arriving = passings.map((passing): Passing => {
    const text = tagsOf(passing)?.opening_hours?.trim();
    if (date === null || !plan.timed || read === undefined || text === undefined || text === '') {
      return { ...passing, arrival: null };
    }
    const at = (pace: 'fast' | 'slow') =>
      localTime({ date, hour }, sumBefore(plan.schedules[pace].elapsedH, passing.atKm * 1000));
    const [earliest, latest] = [at('fast'), at('slow')];
    const answer = read(text, { lon: passing.lon, lat: passing.lat }, earliest, latest);
    const arrival: Arrival = {
      earliest,
      latest,
      open: answer.open,
      waitHours: answer.waitHours,
      text: answer.comment,
    };
    if (passing.counts) {
      const caution = cautionOf(passing, arrival, answer.unreadable ? text : null, waterLPerDay);
      if (caution !== null) cautions.push({ ...caution, fromKm: passing.atKm, toKm: passing.atKm });
    }
    return { ...passing, arrival };
  });
  return { passings: arriving, cautions };
}

function cautionOf(
  passing: Passing,
  { earliest, latest, open, waitHours, text }: Arrival,
  unreadable: string | null,
  waterLPerDay: number,
): Caution | null {
  const name = passing.name ?? passing.kind;
  if (unreadable !== null) {
    return {
      code: 'opening-hours-unread',
      text: `The opening hours of ${name} cannot be read ("${unreadable}"): taken as unknown. Ask before you plan on it.`,
    };
  }
  const when =
    earliest === latest ? clockWords(earliest) : `from ${clockWords(earliest)} to ${clockWords(latest)}`;
  if (open === null) {
    const why = text === null ? '' : ` (${text})`;
    return {
      code: 'opening-hours-unknown',
      text: `Whether ${name} is open when you arrive, ${when}, its mapped hours do not tell${why}. Ask first.`,
    };
  }
  if (open) return null;
  const litres = waitHours === null ? null : (waitHours / 24) * waterLPerDay;
  const wait =
    waitHours === null || litres === null
      ? 'no opening is found in the days after'
      : `waiting takes up to ${oneDecimal(waitHours)} h and ${oneDecimal(litres)} l of water`;
  return {
    code: 'shut-on-arrival',
    text: `${name} is mapped as shut at some of the time in which you may arrive, ${when}: ${wait}, or come earlier.`,
  };
}

/** "2027-05-03T14:05" as a person writes it. */
const clockWords = (local: string): string => local.replace('T', ' ');
const oneDecimal = (value: number): string => (Math.round(value * 10) / 10).toFixed(1);
