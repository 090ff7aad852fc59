import type { LogPlace, NeededColumn, NumberRange } from '../../core/phrases/log-faults.ts';
import type { LogFaultSayings } from '../parts/catalogue.ts';
import { metricText } from '../parts/metric.ts';
import { parts } from '../parts/part.ts';
import { few } from './few.ts';
import { LOG_OMISSIONS, linesText } from './log.ts';

/** A refusal is one line: of more than this the rest are counted. */
const NAMED = 5;
/** Columns of a header that a refusal names. */
const TITLES = 12;
const SHOWN = 40;
const SEPARATORS = { ',': 'comma', ';': 'semicolon', '\t': 'tab' };
const COLUMNS: Record<NeededColumn, string> = {
  odometer: 'odometer_km (or odometer_mi, or trip_km, trip_mi)',
  volume: 'litres (or gal_us, gal_imp)',
  full: 'full',
  date: 'date',
  people: 'people',
  days: 'days',
};
const WITH_UNIT = {
  odometer: 'odometer_km or odometer_mi',
  trip: 'trip_km or trip_mi',
  mass: 'mass_kg or mass_lb',
  gallons: 'gal_us (3.785 l) or gal_imp (4.546 l)',
};

/** Where in a log something is. */
export function logPlaceText(place: LogPlace): string {
  if ('option' in place) return place.option;
  if ('fromLine' in place) return linesText(place);
  return place.column === undefined ? `line ${place.line}` : `line ${place.line}, ${place.column}`;
}

/** A cell as it came, in quotes, short. */
function quoted(text: string): string {
  const characters = [...text];
  return JSON.stringify(characters.length <= SHOWN ? text : `${characters.slice(0, SHOWN - 1).join('')}…`);
}

function rangeText({ above, least, most, unit, whole }: NumberRange): string {
  const from =
    above === undefined ? (least === undefined ? '' : `at least ${least} and `) : `above ${above} and `;
  return `a ${whole === true ? 'whole ' : ''}number ${from}at most ${most}, in ${unit}`;
}

const flagText = ({ yes, no }: { yes: readonly string[]; no: readonly string[] }): string =>
  `${yes.join(', ')}; or ${no.join(', ')}`;

/** Why a log cannot be used. */
export const LOG_FAULTS: LogFaultSayings = {
  'number-form': ({ text, range, decimalComma }) => ({
    came: quoted(text),
    expected: rangeText(range),
    remedy: decimalComma
      ? 'Write plain digits with a comma before the decimals, as 1234,5'
      : 'Write plain digits with a point before the decimals, as 1234.5 (a decimal comma only between semicolons)',
  }),
  'number-ambiguous': ({ text, range }) => ({
    came: quoted(text),
    expected: rangeText(range),
    remedy: `It may be a whole number or one with three decimals: write ${text.replace('.', '')}, or ${text}0`,
  }),
  'number-outside': ({ text, range }) => ({
    came: quoted(text),
    expected: rangeText(range),
    remedy: 'Correct the number',
  }),
  'number-missing': ({ range }) => ({
    came: 'nothing',
    expected: rangeText(range),
    remedy: 'Fill the cell in',
  }),
  'word-unknown': ({ text, ...words }) => ({
    came: quoted(text),
    expected: flagText(words),
    remedy: 'Use one of these words',
  }),
  'full-missing': (words) => ({
    came: 'nothing',
    expected: flagText(words),
    remedy: 'Say whether the tank was filled up; where nobody knows, write part',
  }),
  'surface-unknown': ({ text, surfaces }) => ({
    came: quoted(text),
    expected: `one of ${surfaces.join(', ')}, or nothing`,
    remedy: 'Use one of these words; anything else belongs under note',
  }),
  'date-form': ({ text }) => ({
    came: text === '' ? 'nothing' : quoted(text),
    expected: 'a date such as 2026-05-04',
    remedy: 'Write year, month and day in that order',
  }),

  'log-empty': () => ({
    came: 'an empty file',
    expected: 'a header line and a line for each fill-up',
    remedy: 'Give the log itself',
  }),
  'log-long': ({ most }) => ({
    came: `more than ${most} lines`,
    expected: 'a log of fill-ups or of water',
    remedy: 'Cut it to the time that matters',
  }),
  'cells-surplus': ({ cells, most, separator }) => ({
    came: `${cells} cells`,
    expected: `${most}, as the header has`,
    remedy: `Put a cell that holds a ${SEPARATORS[separator]} in double quotes, or take the surplus out`,
  }),
  'quote-inside': () => ({
    came: 'a double quote inside a cell',
    expected: 'quotes around the whole cell, doubled inside it',
    remedy: 'Write "2"" hose" for 2" hose',
  }),
  'quote-open': () => ({
    came: 'a double quote that is never closed',
    expected: 'a second one at the end of the cell',
    remedy: 'Close it',
  }),
  'column-twice': ({ title, first }) => ({
    came: `${quoted(title)} beside ${quoted(first)}`,
    expected: 'one column of each kind',
    remedy: 'Take one of the two out',
  }),
  'column-missing': ({ kind, missing, needed }) => ({
    came: `a ${kind} log without ${missing.map((name) => COLUMNS[name]).join(', ')}`,
    expected: needed.map((name) => COLUMNS[name]).join(', '),
    remedy: 'Add the column and its heading',
  }),
  'kind-unclear': ({ titles }) => ({
    came: `the columns ${titles.slice(0, TITLES).map(quoted).join(', ')}`,
    expected: 'odometer_km,litres,full for fuel, or date,litres,people,days for water',
    remedy: 'Give a header line that names the columns and their units',
  }),
  'unit-missing': ({ title, of }) => ({
    came: `the heading ${quoted(title)}, which does not tell its unit`,
    expected: WITH_UNIT[of],
    remedy: 'Name the unit in the heading',
  }),

  'odometer-falls': ({ odometer, line, before, beforeLine }) => ({
    came: `${odometer} after ${before} in line ${beforeLine}`,
    expected: 'an odometer that does not go back',
    remedy: `Correct line ${beforeLine} or line ${line}, or put the lines in the order of driving; after a change of odometer add a column "odometer changed" with a yes in that line`,
  }),
  'fill-twice': ({ line }) => ({
    came: `the same fill-up as in line ${line}`,
    expected: 'each fill-up once',
    remedy: 'Take one of the two out; if you did fill so twice there, add the two up in one line',
  }),
  'line-twice': ({ line, date }) => ({
    came: `the same as line ${line} (${quoted(date)})`,
    expected: 'each line once',
    remedy: 'Take one of the two out, or tell them apart in a column "note"',
  }),
  'rate-impossible': ({ litres, km, litresPer100Km, most }) => ({
    came: `${litres.toFixed(1)} l over ${km.toFixed(1)} km, ${Math.round(litresPer100Km)} l/100 km`,
    expected: `at most ${most} l/100 km`,
    remedy: 'Correct the odometer or the litres there',
  }),
  'use-impossible': ({ litresPerDay, people, most }) => ({
    came: `${Math.round(litresPerDay)} l a day for ${people} people`,
    expected: `at most ${most} l a day`,
    remedy: 'Correct the litres, the people or the days of the log',
  }),
  'intervals-few': ({ intervals, leftOut, least, more }) => {
    const found = intervals.map((one) => parts`${linesText(one)}`);
    const omissions = leftOut.map((one) => {
      const lines = one.fromLine === one.toLine ? `line ${one.fromLine}` : linesText(one);
      const why = LOG_OMISSIONS[one.code] as (facts: unknown) => ReturnType<typeof parts>;
      return parts`${lines} ${why(one.facts)}`;
    });
    const foundText = found.length === 0 ? '' : ` (${metricText(few(found, NAMED))})`;
    const leftText = leftOut.length === 0 ? '' : `; left out: ${metricText(few(omissions, NAMED, '; '))}`;
    return {
      came: `${intervals.length} intervals from full tank to full tank${foundText}${leftText}`,
      expected: `at least ${least}`,
      remedy: `Fill up ${more} more ${more === 1 ? 'time' : 'times'} and write it down`,
    };
  },
  'lines-few': ({ lines, least }) => ({
    came: `${lines} lines`,
    expected: `at least ${least} lines, each of one day or some`,
    remedy: `Write down ${least - lines} more`,
  }),
  'people-misplaced': ({ people }) => ({
    came: `${people} people`,
    expected: 'a water log',
    remedy: 'Leave people out for a log of fill-ups',
  }),
  'surface-misplaced': ({ surface }) => ({
    came: surface,
    expected: 'a log of fill-ups',
    remedy: 'Leave the surface out for a water log',
  }),
};
