import type { Day } from '../../../contract/pace.ts';
import { printed } from '../../../words/printed.ts';
import type { PlannedTrip } from '../../plan-trip.ts';
import { figure } from '../../text/lines/figures.ts';
import { kmText } from '../../text/lines/rounding.ts';
import { type Block, cell, row, type SheetColumn } from '../model/model.ts';
import { nameText } from './places.ts';

const words = () => printed().paper.tables.days;
const heads = () => words().columns;

/** Days that are named before the rest is counted (ours): a month and more. */
export const MOST_DAYS = 40;

const columns = (): readonly SheetColumn[] => [
  { ...heads().day, lean: 'right', width: 8 },
  { ...heads().date, lean: 'left', width: 16 },
  { ...heads().stretch, lean: 'left', width: 18 },
  { ...heads().drive, lean: 'right', width: 9 },
  { ...heads().night, lean: 'left', width: 49 },
];

/** Where a day ends, by its name or by what it is. */
export const nightText = ({ halt }: Day): string => nameText(halt.name ?? printed().days.halts[halt.kind]);

/** The days of the drive. What is left on their evenings is the gauge's to say, which goes by the plan. */
export function dayBlocks({ analysis: { days } }: PlannedTrip): Block[] {
  const more = days.rows.length - MOST_DAYS;
  const rows = days.rows
    .slice(0, MOST_DAYS)
    .map((day) =>
      row([
        cell(String(day.day), { strong: true }),
        cell(day.date ?? ''),
        cell(words().stretch(kmText(day.fromKm), kmText(day.toKm))),
        cell(figure(day.hours)),
        cell(nightText(day)),
      ]),
    );
  const lines = [
    ...(more > 0 ? [words().more(more)] : []),
    ...(days.allListed ? [] : [words().notAllListed]),
  ];
  return [
    { kind: 'table', columns: columns(), rows },
    ...(lines.length === 0 ? [] : [{ kind: 'lines' as const, lines }]),
  ];
}
