import type { FuelLog, LogLeftOut, LogRates, LogResult, WaterLog } from '../../contract/answers/log.ts';
import { PRINTED } from '../../words/printed.ts';
import { figure } from './lines/figures.ts';
import { plain, shortened } from './lines/plain.ts';
import { type Column, left, right, tableText } from './lines/table-text.ts';

const WORDS = PRINTED.learnt;
const NOTE_WIDTH = 40;

const FUEL_COLUMNS: readonly Column[] = [
  right(WORDS.fuelColumns.lines),
  right(WORDS.fuelColumns.from),
  right(WORDS.fuelColumns.to),
  right(WORDS.fuelColumns.way),
  right(WORDS.fuelColumns.filled),
  right(WORDS.fuelColumns.use),
  left(WORDS.fuelColumns.surface),
  right(WORDS.fuelColumns.mass),
  left(WORDS.fuelColumns.note),
];

const WATER_COLUMNS: readonly Column[] = [
  right(WORDS.waterColumns.line),
  left(WORDS.waterColumns.date),
  right(WORDS.waterColumns.used),
  right(WORDS.waterColumns.people),
  right(WORDS.waterColumns.time),
  right(WORDS.waterColumns.use),
  left(WORDS.waterColumns.note),
];

/** What a log teaches as text for a terminal: the rates first, then what they come from, then the lines to paste. */
export function learnText(log: LogResult): string {
  const blocks = [
    ...(log.kind === 'fuel' ? fuelBlocks(log) : waterBlocks(log)),
    [WORDS.howCome, ...log.method.map((text) => `- ${text}`)],
    [WORDS.cautions, ...log.cautions.map(({ text }) => `- ${plain(text)}`)],
    ...(log.unreadColumns.length === 0
      ? []
      : [[WORDS.unread(log.unreadColumns.map((title) => plain(title)))]]),
    [WORDS.forRig, '', log.yaml.trimEnd()],
  ];
  return `${blocks.map((block) => block.join('\n')).join('\n\n')}\n`;
}

const rates = ({ low, typical, high }: LogRates, unit: string) =>
  WORDS.rates({ low: figure(low), typical: figure(typical), high: figure(high) }, unit);

function fuelBlocks(log: FuelLog): string[][] {
  const { intervals, total, units } = log;
  const isMetric = units.distance === 'km' && units.volume === 'l';
  return [
    [
      WORDS.source(plain(log.source), rates(log.litresPer100Km, WORDS.units.fuel)),
      WORDS.fuelOverAll(intervals.length, {
        km: figure(total.km),
        litres: figure(total.litres),
        use: figure(total.litresPer100Km),
        units: isMetric ? null : WORDS.logUnits(units.distance, units.volume),
      }),
      ...observedLines(log),
    ],
    [WORDS.intervals, ...tableText(FUEL_COLUMNS, intervals.map(intervalCells))],
    ...(log.leftOut.length === 0 ? [] : [[WORDS.leftOut, ...log.leftOut.map(leftOutLine)]]),
  ];
}

function observedLines({ observed, bySurface }: FuelLog): string[] {
  const { surface, massKg } = observed;
  const lines = [WORDS.observed(surface, massKg === null ? null : Math.round(massKg))];
  if (bySurface.length < 2) return lines;
  for (const row of bySurface) {
    const use = row.litresPer100Km === null ? WORDS.tooFew : rates(row.litresPer100Km, WORDS.units.fuel);
    lines.push(WORDS.onSurface(row.surface, { intervals: row.intervals, km: figure(row.km), use }));
  }
  return lines;
}

function intervalCells(interval: FuelLog['intervals'][number]): string[] {
  return [
    `${interval.fromLine}-${interval.toLine}`,
    figure(interval.fromKm),
    figure(interval.toKm),
    figure(interval.km),
    figure(interval.litres),
    figure(interval.litresPer100Km),
    interval.surface ?? '-',
    interval.massKg === null ? '-' : String(Math.round(interval.massKg)),
    noteOf(interval.outlier, interval.notes.join('; ')),
  ];
}

function leftOutLine({ fromLine, toLine, text }: LogLeftOut): string {
  return WORDS.leftOutLine(fromLine, toLine, text);
}

function waterBlocks(log: WaterLog): string[][] {
  const { crew, total } = log;
  return [
    [
      WORDS.source(plain(log.source), rates(log.litresPerPersonDay, WORDS.units.person)),
      WORDS.forPeople(crew.people, rates(crew.litresPerDay, WORDS.units.day)),
      WORDS.waterOverAll(log.lines, {
        days: figure(total.personDays),
        litres: figure(total.litres),
        use: figure(total.litresPerPersonDay),
      }),
    ],
    [WORDS.linesByDate, ...tableText(WATER_COLUMNS, log.entries.map(entryCells))],
  ];
}

const entryCells = (entry: WaterLog['entries'][number]): string[] => [
  String(entry.line),
  entry.date,
  figure(entry.litres),
  String(entry.people),
  figure(entry.days),
  figure(entry.litresPerPersonDay),
  noteOf(entry.outlier, entry.note ?? ''),
];

const noteOf = (outlier: boolean, note: string): string =>
  [outlier ? WORDS.outlier : '', shortened(plain(note), NOTE_WIDTH)].filter((text) => text !== '').join(': ');
