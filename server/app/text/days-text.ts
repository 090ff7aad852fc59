import type { Analysis } from '../../contract/analysis.ts';
import type { Day } from '../../contract/pace.ts';
import { PRINTED } from '../../words/printed.ts';
import { figure } from './lines/figures.ts';
import { plain, shortened } from './lines/plain.ts';
import { type Column, left, right, tableText } from './lines/table-text.ts';

const WORDS = PRINTED.days;
const HEADS = WORDS.columns;

const COLUMNS: readonly Column[] = [
  right(HEADS.day),
  left(HEADS.date),
  right(HEADS.from),
  right(HEADS.to),
  right(HEADS.drive),
  left(HEADS.night),
  left(HEADS.arrive),
  right(HEADS.fuel),
  right(HEADS.water),
];

/** Where a crew tells the grades. */
const GRADE_COLUMNS: readonly Column[] = [right(HEADS.drinking), right(HEADS.washing)];

const HALT_WIDTH = 32;

/** The days of the drive at the slow pace, one a line; a first line says what they go by. */
export function daysText({ days }: Pick<Analysis, 'days'>): string[] {
  const { drivingHours, elapsedDays, rows, allListed } = days;
  const head = WORDS.head({
    hours: figure(drivingHours.slow),
    slow: figure(elapsedDays.slow),
    typical: figure(elapsedDays.typical),
    fast: figure(elapsedDays.fast),
  });
  const graded = rows.some((day) => day.waterByGrade !== null);
  const columns = graded ? [...COLUMNS, ...GRADE_COLUMNS] : COLUMNS;
  const lines = [
    head,
    ...tableText(
      columns,
      rows.map((day) => cells(day, graded)),
    ),
  ];
  if (!allListed) lines.push(WORDS.notAllListed(rows.length));
  return lines;
}

const cells = (day: Day, graded: boolean): string[] => [
  String(day.day),
  day.date ?? '',
  figure(day.fromKm),
  figure(day.toKm),
  figure(day.hours),
  shortened(plain(day.halt.name ?? WORDS.halts[day.halt.kind]), HALT_WIDTH),
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
  return WORDS.between(from, latest.slice(11));
}
