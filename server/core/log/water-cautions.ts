import type { WaterEntry, WaterLog } from '../../contract/log.ts';
import { few } from './few.ts';

type Caution = WaterLog['cautions'][number];

const DAY_MS = 86_400_000;
/** Half a day, by which a line's days may miss the next line's date: people fill in whole or half days. Ours. */
const SLACK_DAYS = 0.5;
/** Lines that one caution names. */
const NAMED = 10;

/** What to know before planning with what was learned. */
export function waterCautions(learned: Omit<WaterLog, 'cautions'>): Caution[] {
  const { entries, litresPerPersonDay } = learned;
  const cautions: Caution[] = [];
  const say = (code: string, text: string) => cautions.push({ code, text });
  const worst = entries.reduce((most, one) =>
    one.litresPerPersonDay > most.litresPerPersonDay ? one : most,
  );
  if (worst.litresPerPersonDay > litresPerPersonDay.high) {
    say('above-high', `About one line in ten used more than the high figure; the most was ${rate(worst)}.`);
  }
  const outliers = entries.filter((entry) => entry.outlier);
  if (outliers.length > 0) {
    say('outliers', `Far from the rest, counted all the same: ${few(outliers.map(rate), NAMED)}.`);
  }
  const crews = [...new Set(entries.map((entry) => entry.people))].sort((a, b) => a - b);
  if (crews.length > 1) {
    say(
      'people-vary',
      `The log has crews of ${crews.join(', ')}: use is taken to rise with the number of people, though cooking and washing up are shared.`,
    );
  }
  const { holes, overlaps } = stretchesBetween(entries);
  if (holes.length > 0) {
    say('days-not-logged', `Days that no line tells of: ${few(holes, NAMED)}. They count for nothing.`);
  }
  if (overlaps.length > 0) {
    say(
      'days-overlap',
      `Lines whose days overlap: ${few(overlaps, NAMED)}. Right only if they tell of different people or tanks.`,
    );
  }
  say(
    'weather-as-logged',
    'What was used holds for the weather and the work of the days logged. In greater heat people need more: never plan hot days by a cool log.',
  );
  return cautions;
}

const rate = (entry: WaterEntry) =>
  `${entry.litresPerPersonDay.toFixed(1)} l for a person and day (line ${entry.line})`;

/** Where one line's days end before the next line's first day, or after it. */
function stretchesBetween(entries: readonly WaterEntry[]): { holes: string[]; overlaps: string[] } {
  const holes: string[] = [];
  const overlaps: string[] = [];
  for (const [index, entry] of entries.entries()) {
    const next = entries[index + 1];
    if (next === undefined) break;
    const restDays = (Date.parse(next.date) - Date.parse(entry.date)) / DAY_MS - entry.days;
    const text = `between line ${entry.line} and line ${next.line}`;
    if (restDays > SLACK_DAYS) holes.push(`${text} (${Number(restDays.toFixed(1))} days)`);
    if (restDays < -SLACK_DAYS) overlaps.push(`${text} (${Number((-restDays).toFixed(1))} days)`);
  }
  return { holes, overlaps };
}
