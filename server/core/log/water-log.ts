import type { WaterEntry, WaterLog } from '../../contract/log.ts';
import { CellReader } from './cells.ts';
import type { LogColumns } from './columns.ts';
import type { CsvTable } from './csv.ts';
import { logFault, quoted } from './log-fault.ts';
import { fencesOf, isOutlier, LEAST_COUNT, PERCENTILE_WORDS, ratesOf } from './percentile.ts';
import { ratesYaml } from './rate-yaml.ts';
import { LITRES_PER } from './units.ts';
import { waterCautions } from './water-cautions.ts';

/** Most in one line: litres of a rig's tanks, a year (contract and ours). */
const MOST_VOLUME = 5000;
const MOST_PEOPLE = 200;
const MOST_DAYS = 366;
/** A rig file takes no use above this a day (contract). */
const MOST_LITRES_PER_DAY = 1000;

/** What a water log tells of water use, for a crew of `people`, null for the most that the log has. Throws InputProblem. */
export function learnWater(
  table: CsvTable,
  columns: LogColumns,
  source: string,
  people: number | null,
): WaterLog {
  const bare = readEntries(table, columns);
  if (bare.length < LEAST_COUNT) {
    throw logFault(
      null,
      `${bare.length} lines`,
      `at least ${LEAST_COUNT} lines, each of one day or some`,
      `Write down ${LEAST_COUNT - bare.length} more`,
    );
  }
  const rates = bare.map((entry) => entry.litresPerPersonDay);
  const litresPerPersonDay = ratesOf(rates);
  const fences = fencesOf(rates);
  const entries = bare.map((entry): WaterEntry => {
    return { ...entry, outlier: isOutlier(entry.litresPerPersonDay, fences) };
  });
  const heads = people ?? Math.max(...bare.map((entry) => entry.people));
  const { low, typical, high } = litresPerPersonDay;
  const litresPerDay = { low: low * heads, typical: typical * heads, high: high * heads };
  if (litresPerDay.high > MOST_LITRES_PER_DAY) {
    throw logFault(
      null,
      `${Math.round(litresPerDay.high)} l a day for ${heads} people`,
      `at most ${MOST_LITRES_PER_DAY} l a day`,
      'Correct the litres, the people or the days of the log',
    );
  }
  const litres = bare.reduce((sum, entry) => sum + entry.litres, 0);
  const personDays = bare.reduce((sum, entry) => sum + entry.people * entry.days, 0);
  const learned = {
    kind: 'water' as const,
    source,
    lines: entries.length,
    units: { volume: columns.volume },
    entries,
    litresPerPersonDay,
    fences,
    crew: { people: heads, from: people === null ? ('log' as const) : ('asked' as const), litresPerDay },
    total: { litres, personDays, litresPerPersonDay: litres / personDays },
    method: [
      'Each line gives litres divided by people and by days.',
      ...PERCENTILE_WORDS('line'),
      `For the crew: times ${heads} people, ${people === null ? 'the most that the log has (ours)' : 'as asked'}.`,
    ],
    unreadColumns: columns.unread,
    yaml: yamlOf(entries.length, heads, litresPerDay),
  };
  return { ...learned, cautions: waterCautions(learned) };
}

/** The lines by date. A line that is there twice is refused. */
function readEntries(table: CsvTable, columns: LogColumns): Omit<WaterEntry, 'outlier'>[] {
  const cells = new CellReader(table, columns);
  const seen = new Map<string, number>();
  const entries = table.records.map((record) => {
    const date = cells.date(record);
    const range = { above: 0, most: MOST_VOLUME, unit: columns.volume };
    const litres = cells.neededNumber(record, 'volume', range) * LITRES_PER[columns.volume];
    const people = cells.neededNumber(record, 'people', {
      least: 1,
      most: MOST_PEOPLE,
      unit: 'people',
      whole: true,
    });
    const days = cells.neededNumber(record, 'days', { above: 0, most: MOST_DAYS, unit: 'days' });
    const note = cells.text(record, 'note');
    const identity = JSON.stringify([date, litres, people, days, note]);
    const before = seen.get(identity);
    if (before !== undefined) {
      throw logFault(
        `line ${record.line}`,
        `the same as line ${before} (${quoted(date)})`,
        'each line once',
        'Take one of the two out, or tell them apart in a column "note"',
      );
    }
    seen.set(identity, record.line);
    return {
      line: record.line,
      date,
      litres,
      people,
      days,
      litresPerPersonDay: litres / (people * days),
      note: note === '' ? null : note,
    };
  });
  return entries.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.line - b.line));
}

function yamlOf(count: number, people: number, rates: WaterLog['crew']['litresPerDay']): string {
  const range = ratesYaml(rates);
  return [
    'water:',
    `  litresPerDay: ${range} # ${people} people, learned from ${count} lines`,
    '# in a rig that tells its crew, in place of it:',
    '# crew:',
    `#   observedLitresPerDay: ${range}`,
    '',
  ].join('\n');
}
