import type { Caution } from '../phrases/cautions.ts';
import type { Lines } from '../phrases/log.ts';
import type { WaterLesson } from './lesson.ts';

const DAY_MS = 86_400_000;
/** Half a day, by which a line's days may miss the next line's date: people fill in whole or half days. Ours. */
const SLACK_DAYS = 0.5;

/** What to know before planning with what was learned. */
export function waterCautions({ entries, litresPerPersonDay }: Omit<WaterLesson, 'cautions'>): Caution[] {
  const cautions: Caution[] = [];
  const worst = entries.reduce((most, one) =>
    one.litresPerPersonDay > most.litresPerPersonDay ? one : most,
  );
  if (worst.litresPerPersonDay > litresPerPersonDay.high) {
    cautions.push({ code: 'above-high', facts: { kind: 'water', worst } });
  }
  const rates = entries.filter((entry) => entry.outlier);
  if (rates.length > 0) cautions.push({ code: 'outliers', facts: { kind: 'water', rates } });
  const crews = [...new Set(entries.map((entry) => entry.people))].sort((a, b) => a - b);
  if (crews.length > 1) cautions.push({ code: 'people-vary', facts: { crews } });
  const { holes, overlaps } = stretchesBetween(entries);
  if (holes.length > 0) cautions.push({ code: 'days-not-logged', facts: { stretches: holes } });
  if (overlaps.length > 0) cautions.push({ code: 'days-overlap', facts: { stretches: overlaps } });
  cautions.push({ code: 'weather-as-logged', facts: {} });
  return cautions;
}

type DaysBetween = Lines & { days: number };

/** Where one line's days end before the next line's first day, or after it. */
function stretchesBetween(entries: WaterLesson['entries']): {
  holes: DaysBetween[];
  overlaps: DaysBetween[];
} {
  const holes: DaysBetween[] = [];
  const overlaps: DaysBetween[] = [];
  for (const [index, entry] of entries.entries()) {
    const next = entries[index + 1];
    if (next === undefined) break;
    const days = (Date.parse(next.date) - Date.parse(entry.date)) / DAY_MS - entry.days;
    const lines = { fromLine: entry.line, toLine: next.line };
    if (days > SLACK_DAYS) holes.push({ ...lines, days });
    if (days < -SLACK_DAYS) overlaps.push({ ...lines, days: -days });
  }
  return { holes, overlaps };
}
