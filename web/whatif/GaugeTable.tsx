import { useMemo, useState } from 'react';
import type { Commodity } from '../../server/contract/common.ts';
import type { GaugeRow, GaugeSide } from '../../server/contract/whatif.ts';
import { andAll, worded } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { Focus } from '../state/focus.ts';
import { type Column, type CsvColumn, DataTable } from '../table/DataTable.tsx';
import {
  distanceIn,
  distanceUnit,
  figureAtKm,
  type UnitSystem,
  volumeIn,
  volumeUnit,
  volumeUnitInFull,
} from '../units/units.ts';
import { placeWords } from '../words/plan-words.ts';
import { figureAboard, figureAtLeast, figureBeside } from './gauge-figures.ts';

interface NumberedRow {
  key: string;
  row: GaugeRow;
}

interface GaugeTableProps {
  rows: readonly GaugeRow[];
  units: UnitSystem;
  /** Name of the route, fit for a file. */
  file: string;
  onFocus: (next: Partial<Focus>) => void;
}

const keyOf = ({ key }: NumberedRow): string => key;
const COMMODITIES: readonly Commodity[] = ['fuel', 'water'];

/** The least to have aboard along the road, to go on and to go back, cans and reserve included. */
export function GaugeTable({ rows, units, file, onFocus }: GaugeTableProps) {
  const [chosen, setChosen] = useState<string | null>(null);
  const numbered = useMemo(
    () => rows.map((row, place) => ({ row, key: `${place} ${row.at} ${row.atKm}` })),
    [rows],
  );
  const columns = useMemo(() => columnsFor(units), [units]);
  const csv = useMemo(() => ({ name: `${file}-gauge`, columns: csvColumnsFor(units) }), [file, units]);
  return (
    <>
      <DataTable
        caption={t`Gauge: least to have aboard, ${volumeUnit(units)}`}
        columns={columns}
        rows={numbered}
        rowKey={keyOf}
        selected={chosen}
        onSelect={(one) => setChosen(one?.key ?? null)}
        onPoint={(one) => onFocus({ atKm: one?.row.atKm ?? null })}
        details={({ row }) => <GaugeDetails row={row} units={units} />}
        csv={csv}
        empty={t('There is no stretch to reckon.')}
      />
      <p className="soft">
        {t(
          'All that can be used, cans and reserve included: what is needed is rounded up, what is aboard down.',
        )}
      </p>
    </>
  );
}

/** What a row is the row of, in words; empty for a plain step. */
function gaugePlace({ at, name, commodities }: GaugeRow): string {
  switch (at) {
    case 'start':
      return name ?? t('start');
    case 'end':
      return name ?? t('end');
    case 'step':
      return '';
    case 'arriving':
      return t`to ${name ?? t('a supply')}`;
    case 'leaving':
      return t`from ${name ?? t('a supply')}, ${andAll(commodities.map(worded))} filled`;
    case 'turn-back':
      return t`last place to turn back for ${andAll(commodities.map(worded))}`;
  }
}

/** Where less is aboard than needed, what is aboard stands there too: beyond a turn-back point, or without a plan. */
function Least({ least, side, units }: { least: number | null; side: GaugeSide; units: UnitSystem }) {
  if (least === null) return <span className="soft">{t('none')}</span>;
  return (
    <>
      {figureAtLeast(least, units)}
      {least > side.plannedL + 1e-6 && (
        <span className="second">{tx`aboard ${figureAboard(side.plannedL, units)}`}</span>
      )}
    </>
  );
}

function columnsFor(units: UnitSystem): Column<NumberedRow>[] {
  return [
    {
      key: 'at',
      head: distanceUnit(units),
      width: '32%',
      value: ({ row }) => row.atKm,
      cell: ({ row }) => {
        const place = gaugePlace(row);
        return (
          <>
            {figureAtKm(row.atKm, units)} {place !== '' && <span className="second">{place}</span>}
          </>
        );
      },
    },
    ...COMMODITIES.flatMap((commodity): Column<NumberedRow>[] => [
      {
        key: `${commodity} on`,
        head: t`${worded(commodity)} on`,
        align: 'end',
        value: ({ row }) => row[commodity].onL,
        cell: ({ row }) => <Least least={row[commodity].onL} side={row[commodity]} units={units} />,
      },
      {
        key: `${commodity} back`,
        head: t('back'),
        align: 'end',
        value: ({ row }) => row[commodity].backL,
        cell: ({ row }) => <Least least={row[commodity].backL} side={row[commodity]} units={units} />,
      },
    ]),
  ];
}

function GaugeDetails({ row, units }: { row: GaugeRow; units: UnitSystem }) {
  return (
    <ul>
      {COMMODITIES.map((commodity) => {
        const { onL, backL, plannedL, from, to } = row[commodity];
        const volume = volumeUnit(units);
        return (
          <li
            key={commodity}
          >{tx`${<b>{worded(commodity)}</b>}: ${figureBeside(plannedL, onL, units)} ${volume} aboard. On to ${placeWords(to, units)} it takes ${figureAtLeast(onL, units)} ${volume}; ${
            backL === null
              ? t('the way cannot be driven back')
              : t`back to ${placeWords(from, units)} ${figureAtLeast(backL, units)}\u00a0${volume}`
          }.`}</li>
        );
      })}
    </ul>
  );
}

function csvColumnsFor(units: UnitSystem): CsvColumn<NumberedRow>[] {
  const long = distanceUnit(units);
  const volume = volumeUnitInFull(units);
  const litres = (amount: number | null) => (amount === null ? null : volumeIn(amount, units));
  return [
    { head: t`at (${long} along)`, value: ({ row }) => distanceIn(row.atKm, units) },
    { head: t('place'), value: ({ row }) => gaugePlace(row) },
    ...COMMODITIES.flatMap((commodity): CsvColumn<NumberedRow>[] => [
      { head: t`${worded(commodity)} to go on (${volume})`, value: ({ row }) => litres(row[commodity].onL) },
      {
        head: t`${worded(commodity)} to go back (${volume})`,
        value: ({ row }) => litres(row[commodity].backL),
      },
      {
        head: t`${worded(commodity)} planned (${volume})`,
        value: ({ row }) => litres(row[commodity].plannedL),
      },
    ]),
  ];
}
