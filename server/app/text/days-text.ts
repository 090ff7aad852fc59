import type { Analysis } from '../../contract/analysis.ts';
import type { Day } from '../../contract/pace.ts';
import { figure } from './lines/figures.ts';
import { plain, shortened } from './lines/plain.ts';
import { type Column, tableText } from './lines/table-text.ts';

const COLUMNS: readonly Column[] = [
  { head: 'day', unit: '', lean: 'right' },
  { head: 'date', unit: '', lean: 'left' },
  { head: 'from', unit: 'km', lean: 'right' },
  { head: 'to', unit: 'km', lean: 'right' },
  { head: 'drive', unit: 'h', lean: 'right' },
  { head: 'night at', unit: '', lean: 'left' },
  { head: 'arrive', unit: '', lean: 'left' },
  { head: 'fuel left', unit: 'l', lean: 'right' },
  { head: 'water left', unit: 'l', lean: 'right' },
];

/** Where a crew tells the grades. */
const GRADE_COLUMNS: readonly Column[] = [
  { head: 'drinking', unit: 'l', lean: 'right' },
  { head: 'washing', unit: 'l', lean: 'right' },
];

const HALT_WIDTH = 32;
/** A stay is more often a rest than a wait, but may be either. */
const HALT_WORDS: Record<Day['halt']['kind'], string> = {
  camp: 'camp',
  pace: "the day's hours end",
  stay: 'stay',
  end: 'end of the route',
};

/** The days of the drive at the slow pace, one a line; a first line says what they go by. */
export function daysText({ days }: Pick<Analysis, 'days'>): string[] {
  const { drivingHours, elapsedDays, rows, allListed } = days;
  const head = `Days at the slow pace: ${figure(drivingHours.slow)} h of driving in ${figure(elapsedDays.slow)} days (typical ${figure(elapsedDays.typical)}, fast ${figure(elapsedDays.fast)}). Water goes by the time that passes, nights included.`;
  const graded = rows.some((day) => day.waterByGrade !== null);
  const columns = graded ? [...COLUMNS, ...GRADE_COLUMNS] : COLUMNS;
  const lines = [
    head,
    ...tableText(
      columns,
      rows.map((day) => cells(day, graded)),
    ),
  ];
  if (!allListed) lines.push(`The drive goes on for more days than the ${rows.length} listed.`);
  return lines;
}

const cells = (day: Day, graded: boolean): string[] => [
  String(day.day),
  day.date ?? '',
  figure(day.fromKm),
  figure(day.toKm),
  figure(day.hours),
  shortened(plain(day.halt.name ?? HALT_WORDS[day.halt.kind]), HALT_WIDTH),
  arriveText(day),
  figure(day.fuelL),
  figure(day.waterL),
  ...(graded ? gradeCells(day) : []),
];

const gradeCells = ({ waterByGrade }: Day): string[] =>
  waterByGrade === null ? ['', ''] : [figure(waterByGrade.drinkingL), figure(waterByGrade.washingL)];

/** Clock times; the fast pace's with its day where it is another day than the slow one's. */
function arriveText({ arrive }: Day): string {
  if (arrive === null) return '';
  const { earliest, latest } = arrive;
  if (earliest === latest) return latest.slice(11);
  const from =
    earliest.slice(0, 10) === latest.slice(0, 10) ? earliest.slice(11) : earliest.replace('T', ' ');
  return `${from} to ${latest.slice(11)}`;
}
