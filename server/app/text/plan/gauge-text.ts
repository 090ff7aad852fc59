import type { Gauge, GaugeRow, GaugeSide } from '../../../contract/whatif.ts';
import { figure } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';
import { type Column, left, right, tableText } from '../lines/table-text.ts';

const COLUMNS: readonly Column[] = [
  right('at', 'km'),
  left('place'),
  right('fuel to go on', 'l'),
  right('to go back', 'l'),
  right('planned', 'l'),
  right('water to go on', 'l'),
  right('to go back', 'l'),
  right('planned', 'l'),
];

/** The gauge table in whole litres: what is needed rounded up, what is planned rounded down, but never below what it covers. */
export function gaugeLines({ rows, basis }: Gauge): string[] {
  const which = basis === 'plan' ? 'the plan' : 'there is no plan: full tanks at every supply that counts';
  return [
    '',
    `Gauge: least to have aboard, cans and reserve included (${which})`,
    ...tableText(COLUMNS, rows.map(cellsOf)),
  ];
}

const cellsOf = (row: GaugeRow): string[] => [
  figure(row.atKm),
  placeOf(row),
  ...sideCells(row.fuel),
  ...sideCells(row.water),
];

/** Litres below this are float noise and no reason for one litre more. */
const NOISE_L = 1e-6;
const up = (litres: number): string => String(Math.ceil(litres - NOISE_L));
const down = (litres: number): string => String(Math.floor(litres + NOISE_L));

const sideCells = ({ onL, backL, plannedL }: GaugeSide): string[] => [
  up(onL),
  backL === null ? '-' : up(backL),
  plannedL >= onL - NOISE_L ? String(Math.max(Number(down(plannedL)), Number(up(onL)))) : down(plannedL),
];

function placeOf({ at, name, commodities }: GaugeRow): string {
  const what = commodities.join(' and ');
  switch (at) {
    case 'start':
      return `start${name === null ? '' : `, ${plain(name)}`}`;
    case 'end':
      return `end${name === null ? '' : `, ${plain(name)}`}`;
    case 'step':
      return '';
    case 'arriving':
      return `to ${plain(name ?? 'a supply')}`;
    case 'leaving':
      return `from ${plain(name ?? 'a supply')}, ${what} filled`;
    case 'turn-back':
      return `last place to turn back for ${what}`;
  }
}
