import type { Gauge, GaugeRow, GaugeSide } from '../../../contract/whatif.ts';
import { aboardBeside, wholeAbove } from '../../../core/quantity/rounding.ts';
import { PRINTED } from '../../../words/printed.ts';
import { figure } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';
import { type Column, left, right, tableText } from '../lines/table-text.ts';

const WORDS = PRINTED.gauge;
const HEADS = WORDS.columns;

const COLUMNS: readonly Column[] = [
  right(HEADS.at),
  left(HEADS.place),
  right(HEADS.fuelOn),
  right(HEADS.fuelBack),
  right(HEADS.fuelPlanned),
  right(HEADS.waterOn),
  right(HEADS.waterBack),
  right(HEADS.waterPlanned),
];

/** The gauge table in whole litres: what is needed rounded up, what is planned rounded down, but never below what it covers. */
export function gaugeLines({ rows, basis }: Gauge): string[] {
  return ['', WORDS.head(WORDS.bases[basis]), ...tableText(COLUMNS, rows.map(cellsOf))];
}

const cellsOf = (row: GaugeRow): string[] => [
  figure(row.atKm),
  gaugePlace(row),
  ...sideCells(row.fuel),
  ...sideCells(row.water),
];

const sideCells = ({ onL, backL, plannedL }: GaugeSide): string[] => [
  String(wholeAbove(onL)),
  backL === null ? '-' : String(wholeAbove(backL)),
  String(aboardBeside(plannedL, onL)),
];

/** What a row is the row of, in words; empty for a plain step. */
export function gaugePlace({ at, name, commodities }: GaugeRow): string {
  const what = PRINTED.lines.both(commodities);
  switch (at) {
    case 'start':
      return name === null ? WORDS.start : WORDS.named(WORDS.start, plain(name));
    case 'end':
      return name === null ? WORDS.end : WORDS.named(WORDS.end, plain(name));
    case 'step':
      return '';
    case 'arriving':
      return WORDS.arriving(plain(name ?? WORDS.unnamed));
    case 'leaving':
      return WORDS.leaving(plain(name ?? WORDS.unnamed), what);
    case 'turn-back':
      return WORDS.turnBack(what);
  }
}
