import type { Lines } from '../../core/phrases/log.ts';
import type { Catalogue } from '../parts/catalogue.ts';
import { figure, fixed } from '../parts/figures.ts';
import { type Parts, parts } from '../parts/part.ts';
import { few } from './few.ts';

/** Intervals, lines or stretches that one caution names; the result marks them all. */
const NAMED = 10;

export const linesText = ({ fromLine, toLine }: Lines): string => `lines ${fromLine} to ${toLine}`;

const intervalRate = (one: Lines & { litresPer100Km: number }): Parts =>
  parts`${fixed(one.litresPer100Km, 'l/100 km')} (${linesText(one)})`;
const entryRate = (one: { line: number; litresPerPersonDay: number }): Parts =>
  parts`${fixed(one.litresPerPersonDay, 'l')} for a person and day (line ${one.line})`;
/** Days to one decimal at most, as a person would count them. */
const daysBetween = ({ fromLine, toLine, days }: Lines & { days: number }): Parts =>
  parts`between line ${fromLine} and line ${toLine} (${figure(Number(days.toFixed(1)), 'days')})`;

/** What to know before planning with what a log taught. */
export const LOG_CAUTIONS = {
  'above-high': (facts) =>
    facts.kind === 'fuel'
      ? parts`About one interval in ten used more than the high figure; the most was ${intervalRate(facts.worst)}. Plan with more where the way is worse than what was logged.`
      : parts`About one line in ten used more than the high figure; the most was ${entryRate(facts.worst)}.`,
  outliers: (facts) =>
    facts.kind === 'fuel'
      ? parts`Far from the rest, counted all the same: ${few(facts.rates.map(intervalRate), NAMED)}. Too low may mean a fill-up that was not written down, too high a tank that was not full: mark such a line, or correct it.`
      : parts`Far from the rest, counted all the same: ${few(facts.rates.map(entryRate), NAMED)}.`,
  'few-intervals': ({ intervals }) =>
    parts`${intervals} intervals are few: the high figure hangs on the two highest of them.`,
  'short-intervals': ({ intervals }) => {
    const named = intervals.map((one) => parts`${fixed(one.km, 'km')} (${linesText(one)})`);
    return parts`Short ones, in which a pump that stops a litre early or late matters most: ${few(named, NAMED)}.`;
  },
  'mixed-surfaces': () =>
    parts`The intervals are of more than one surface, or some do not tell theirs: the range of all together is of the mixture as logged. Learn from one surface alone (--surface) where there are enough.`,
  'surface-not-told': () =>
    parts`The log does not tell the surface (a column "surface"): say in the rig under /fuel/observed what it was, else use is not raised rightly for sand.`,
  'mass-not-told': () =>
    parts`The log does not tell the mass of the loaded vehicle (a column "mass_kg"): say it in the rig under /fuel/observed if you know it.`,
  'all-in': () =>
    parts`Litres of a log hold idling, heater and climbs as well. What the rig tells of them beside a learned rate (/fuel/perHour, /fuel/hours) is counted once more: that errs on the safe side.`,
  'split-fill': ({ lines }) => {
    const named = lines.map((line) => parts`line ${line}`);
    return parts`At the same odometer as the line before it, so taken as one halt with it: ${few(named, NAMED)}.`;
  },
  'newest-first': () => parts`The odometer falls from line to line: the log was read with the newest first.`,
  'people-vary': ({ crews }) =>
    parts`The log has crews of ${crews.join(', ')}: use is taken to rise with the number of people, though cooking and washing up are shared.`,
  'days-not-logged': ({ stretches }) =>
    parts`Days that no line tells of: ${few(stretches.map(daysBetween), NAMED)}. They count for nothing.`,
  'days-overlap': ({ stretches }) =>
    parts`Lines whose days overlap: ${few(stretches.map(daysBetween), NAMED)}. Right only if they tell of different people or tanks.`,
  'weather-as-logged': () =>
    parts`What was used holds for the weather and the work of the days logged. In greater heat people need more: never plan hot days by a cool log.`,
} satisfies Partial<Catalogue['cautions']>;

/** Why lines of a log of fill-ups give no rate. */
export const LOG_OMISSIONS = {
  'before-first-full': () => parts`filled before the first full tank`,
  'after-last-full': () => parts`filled after the last full tank`,
  'fill-missing': ({ line, lacks }) =>
    lacks === 'fill-up'
      ? parts`from full to full, but a fill-up before line ${line} is missing`
      : parts`from full to full, but line ${line} has no litres`,
  'other-surface': ({ surface }) => parts`not on ${surface} throughout`,
} satisfies Partial<Catalogue['reasons']>;

/** How the figures of a log were come by, and what stands beside them in the lines for a rig. */
export const LOG_PHRASES = {
  'log-intervals': () =>
    parts`An interval runs from one full tank to the next; all that was filled after the first, part fills included, was used in it.`,
  'log-percentiles': ({ each }) =>
    parts`Low, typical and high are the 10th, 50th and 90th percentile of these, each ${each} counting once, whatever its length (linear between neighbours at position (n - 1) p).`,
  'log-fences': ({ fence }) =>
    parts`Outliers lie more than ${fence} times the quartiles' distance beyond the quartiles. They are listed, and they count.`,
  'log-entries': () => parts`Each line gives litres divided by people and by days.`,
  'log-crew': ({ people, from }) =>
    parts`For the crew: times ${people} people, ${from === 'log' ? 'the most that the log has (ours)' : 'as asked'}.`,
  'log-yaml-intervals': ({ intervals, km }) =>
    parts`${intervals} intervals from full to full, ${Math.round(km)} km`,
  'log-yaml-lines': ({ people, lines }) => parts`${people} people, learned from ${lines} lines`,
  'log-yaml-crew': () => parts`in a rig that tells its crew, in place of it:`,
} satisfies Partial<Catalogue['phrases']>;
