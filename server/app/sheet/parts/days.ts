import type { Day } from '../../../contract/pace.ts';
import { PRINTED } from '../../../words/printed.ts';
import { kmText } from '../../export/rounding.ts';
import type { PlannedTrip } from '../../plan-trip.ts';
import { type Block, cell, row, type SheetColumn } from '../model/model.ts';
import { nameText } from './places.ts';

const WORDS = PRINTED.paper.tables.days;
const HEADS = WORDS.columns;

/** Days that are named before the rest is counted (ours): a month and more. */
export const MOST_DAYS = 40;

const COLUMNS: readonly SheetColumn[] = [
  { ...HEADS.day, lean: 'right', width: 8 },
  { ...HEADS.date, lean: 'left', width: 16 },
  { ...HEADS.stretch, lean: 'left', width: 18 },
  { ...HEADS.drive, lean: 'right', width: 9 },
  { ...HEADS.night, lean: 'left', width: 49 },
];

/** Where a day ends, by its name or by what it is. */
export const nightText = ({ halt }: Day): string => nameText(halt.name ?? PRINTED.days.halts[halt.kind]);

/** The days of the drive. What is left on their evenings is the gauge's to say, which goes by the plan. */
export function dayBlocks({ analysis: { days } }: PlannedTrip): Block[] {
  const more = days.rows.length - MOST_DAYS;
  const rows = days.rows
    .slice(0, MOST_DAYS)
    .map((day) =>
      row([
        cell(String(day.day), { strong: true }),
        cell(day.date ?? ''),
        cell(WORDS.stretch(kmText(day.fromKm), kmText(day.toKm))),
        cell(day.hours.toFixed(1)),
        cell(nightText(day)),
      ]),
    );
  const lines = [...(more > 0 ? [WORDS.more(more)] : []), ...(days.allListed ? [] : [WORDS.notAllListed])];
  return [
    { kind: 'table', columns: COLUMNS, rows },
    ...(lines.length === 0 ? [] : [{ kind: 'lines' as const, lines }]),
  ];
}
