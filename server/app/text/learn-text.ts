import type { FuelLog, LogLeftOut, LogRates, LogResult, WaterLog } from '../../contract/answers/log.ts';
import { figure } from './lines/figures.ts';
import { plain, shortened } from './lines/plain.ts';
import { type Column, tableText } from './lines/table-text.ts';

const left = (head: string): Column => ({ head, unit: '', lean: 'left' });
const right = (head: string, unit: string): Column => ({ head, unit, lean: 'right' });
const NOTE_WIDTH = 40;

const FUEL_COLUMNS: readonly Column[] = [
  right('lines', ''),
  right('from', 'km'),
  right('to', 'km'),
  right('way', 'km'),
  right('filled', 'l'),
  right('use', 'l/100 km'),
  left('surface'),
  right('mass', 'kg'),
  left('note'),
];

const WATER_COLUMNS: readonly Column[] = [
  right('line', ''),
  left('date'),
  right('used', 'l'),
  right('people', ''),
  right('time', 'days'),
  right('use', 'l/person/day'),
  left('note'),
];

/** What a log teaches as text for a terminal: the rates first, then what they come from, then the lines to paste. */
export function learnText(log: LogResult): string {
  const blocks = [
    ...(log.kind === 'fuel' ? fuelBlocks(log) : waterBlocks(log)),
    ['How it was come by', ...log.method.map((text) => `- ${text}`)],
    ['Cautions', ...log.cautions.map(({ text }) => `- ${plain(text)}`)],
    ...(log.unreadColumns.length === 0
      ? []
      : [[`Columns not looked at: ${log.unreadColumns.map((title) => plain(title)).join(', ')}`]]),
    ['For the rig file', '', log.yaml.trimEnd()],
  ];
  return `${blocks.map((block) => block.join('\n')).join('\n\n')}\n`;
}

const rates = ({ low, typical, high }: LogRates, unit: string) =>
  `low ${figure(low)}, typical ${figure(typical)}, high ${figure(high)} ${unit}`;

function fuelBlocks(log: FuelLog): string[][] {
  const { intervals, total, units } = log;
  const from = `${intervals.length} intervals from full tank to full tank, ${figure(total.km)} km, ${figure(total.litres)} l`;
  const converted =
    units.distance === 'km' && units.volume === 'l'
      ? ''
      : ` (the log is in ${units.distance} and ${units.volume})`;
  return [
    [
      `${plain(log.source)}: ${rates(log.litresPer100Km, 'l/100 km')}`,
      `${from}, ${figure(total.litresPer100Km)} l/100 km over all${converted}`,
      ...observedLines(log),
    ],
    ['Intervals', ...tableText(FUEL_COLUMNS, intervals.map(intervalCells))],
    ...(log.leftOut.length === 0 ? [] : [['Left out', ...log.leftOut.map(leftOutLine)]]),
  ];
}

function observedLines({ observed, bySurface }: FuelLog): string[] {
  const { surface, massKg } = observed;
  const lines = [
    `observed on ${surface ?? 'no one surface that the log tells'}, ${massKg === null ? 'mass not told' : `at ${Math.round(massKg)} kg`}`,
  ];
  if (bySurface.length < 2) return lines;
  for (const row of bySurface) {
    const use =
      row.litresPer100Km === null ? 'too few for rates of their own' : rates(row.litresPer100Km, 'l/100 km');
    lines.push(
      `- ${row.surface ?? 'surface mixed or not told'}: ${row.intervals === 1 ? '1 interval' : `${row.intervals} intervals`}, ${figure(row.km)} km; ${use}`,
    );
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
  return `- ${fromLine === toLine ? `line ${fromLine}` : `lines ${fromLine} to ${toLine}`}: ${text}`;
}

function waterBlocks(log: WaterLog): string[][] {
  const { crew, total } = log;
  return [
    [
      `${plain(log.source)}: ${rates(log.litresPerPersonDay, 'l for a person and day')}`,
      `for ${crew.people} people: ${rates(crew.litresPerDay, 'l a day')}`,
      `${log.lines} lines, ${figure(total.personDays)} days of a person, ${figure(total.litres)} l, ${figure(total.litresPerPersonDay)} l for a person and day over all`,
    ],
    ['Lines by date', ...tableText(WATER_COLUMNS, log.entries.map(entryCells))],
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
  [outlier ? 'outlier' : '', shortened(plain(note), NOTE_WIDTH)].filter((text) => text !== '').join(': ');
