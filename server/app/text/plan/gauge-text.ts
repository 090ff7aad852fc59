import type { Gauge, GaugeRow, GaugeSide } from '../../../contract/whatif.ts';
import { aboardBeside, wholeAbove } from '../../../core/quantity/rounding.ts';
import { printed } from '../../../words/printed.ts';
import { figure } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';
import { type Column, left, right, tableText } from '../lines/table-text.ts';

const words = () => printed().gauge;
const heads = () => words().columns;

const COLUMNS: readonly Column[] = [
  right(heads().at),
  left(heads().place),
  right(heads().fuelOn),
  right(heads().fuelBack),
  right(heads().fuelPlanned),
  right(heads().waterOn),
  right(heads().waterBack),
  right(heads().waterPlanned),
];

/** The gauge table in whole litres: what is needed rounded up, what is planned rounded down, but never below what it covers. */
export function gaugeLines({ rows, basis }: Gauge): string[] {
  return ['', words().head(words().bases[basis]), ...tableText(COLUMNS, rows.map(cellsOf))];
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
  const what = printed().lines.both(commodities);
  switch (at) {
    case 'start':
      return name === null ? words().start : words().named(words().start, plain(name));
    case 'end':
      return name === null ? words().end : words().named(words().end, plain(name));
    case 'step':
      return '';
    case 'arriving':
      return words().arriving(plain(name ?? words().unnamed));
    case 'leaving':
      return words().leaving(plain(name ?? words().unnamed), what);
    case 'turn-back':
      return words().turnBack(what);
  }
}
