import type { WaterEntry, WaterLog } from '../../contract/answers/log.ts';
import { CellReader } from './cells.ts';
import type { WaterColumns } from './columns.ts';
import type { CsvRecord, CsvTable } from './csv.ts';
import { FaultyLog } from './faulty-log.ts';
import type { WaterLesson } from './lesson.ts';
import { fencesOf, isOutlier, LEAST_COUNT, percentileMethod, ratesOf } from './percentile.ts';
import { LITRES_PER } from './units.ts';
import { waterCautions } from './water-cautions.ts';

type BareEntry = Omit<WaterEntry, 'outlier'>;

/** Most in one line: litres of a rig's tanks, a year (contract and ours). */
const MOST_VOLUME = 5000;
const MOST_PEOPLE = 200;
const MOST_DAYS = 366;
/** A rig file takes no use above this a day (contract). */
const MOST_LITRES_PER_DAY = 1000;

/** What a water log tells of water use, for a crew of `people`, null for the most that the log has. Throws FaultyLog. */
export function learnWater(table: CsvTable, columns: WaterColumns, people: number | null): WaterLesson {
  const entries = readEntries(table, columns);
  if (entries.length < LEAST_COUNT) {
    const facts = { lines: entries.length, least: LEAST_COUNT };
    throw new FaultyLog({ place: null, fault: 'lines-few', facts });
  }
  const rates = entries.map((entry) => entry.litresPerPersonDay);
  const fences = fencesOf(rates);
  const litresPerPersonDay = ratesOf(rates);
  const crew = crewOf(entries, litresPerPersonDay, people);
  const litres = entries.reduce((sum, entry) => sum + entry.litres, 0);
  const personDays = entries.reduce((sum, entry) => sum + entry.people * entry.days, 0);
  const lesson = {
    kind: 'water' as const,
    lines: entries.length,
    units: { volume: columns.volume },
    entries: entries.map((one) => ({ ...one, outlier: isOutlier(one.litresPerPersonDay, fences) })),
    litresPerPersonDay,
    fences,
    crew,
    total: { litres, personDays, litresPerPersonDay: litres / personDays },
    method: [
      { phrase: 'log-entries', facts: {} } as const,
      ...percentileMethod('line'),
      { phrase: 'log-crew', facts: { people: crew.people, from: crew.from } } as const,
    ],
    unreadColumns: columns.unread,
  };
  return { ...lesson, cautions: waterCautions(lesson) };
}

/** The rates for so many people, null for the most that the log has. */
function crewOf(
  entries: readonly BareEntry[],
  { low, typical, high }: WaterLog['litresPerPersonDay'],
  asked: number | null,
): WaterLog['crew'] {
  const people = asked ?? Math.max(...entries.map((entry) => entry.people));
  const litresPerDay = { low: low * people, typical: typical * people, high: high * people };
  if (litresPerDay.high > MOST_LITRES_PER_DAY) {
    const facts = { litresPerDay: litresPerDay.high, people, most: MOST_LITRES_PER_DAY };
    throw new FaultyLog({ place: null, fault: 'use-impossible', facts });
  }
  return { people, from: asked === null ? 'log' : 'asked', litresPerDay };
}

/** The lines by date. A line that is there twice is refused. */
function readEntries(table: CsvTable, columns: WaterColumns): BareEntry[] {
  const cells = new CellReader(table, columns);
  const lineOf = new Map<string, number>();
  const entries = table.records.map((record) => {
    const entry = entryOf(record, cells, columns);
    const { line, date, people, days } = entry;
    const identity = JSON.stringify([date, entry.litres, people, days, cells.text(record, 'note')]);
    const first = lineOf.get(identity);
    if (first !== undefined) {
      throw new FaultyLog({ place: { line }, fault: 'line-twice', facts: { line: first, date } });
    }
    lineOf.set(identity, line);
    return entry;
  });
  return entries.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.line - b.line));
}

function entryOf(record: CsvRecord, cells: CellReader, { volume }: WaterColumns): BareEntry {
  const date = cells.date(record);
  const range = { above: 0, most: MOST_VOLUME, unit: volume };
  const litres = cells.neededNumber(record, 'volume', range) * LITRES_PER[volume];
  const people = cells.neededNumber(record, 'people', {
    least: 1,
    most: MOST_PEOPLE,
    unit: 'people',
    whole: true,
  });
  const days = cells.neededNumber(record, 'days', { above: 0, most: MOST_DAYS, unit: 'days' });
  const note = cells.text(record, 'note');
  return {
    line: record.line,
    date,
    litres,
    people,
    days,
    litresPerPersonDay: litres / (people * days),
    note: note === '' ? null : note,
  };
}
