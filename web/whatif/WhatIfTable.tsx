import { useMemo, useState } from 'react';
import type { FuelKind } from '../../server/contract/rig.ts';
import type { WhatIfRow } from '../../server/contract/whatif.ts';
import { VerdictMark } from '../kit/VerdictMark.tsx';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { Focus } from '../state/focus.ts';
import { type Column, type CsvColumn, DataTable } from '../table/DataTable.tsx';
import {
  distanceIn,
  distanceUnit,
  figureLitres,
  formatAtKm,
  type UnitSystem,
  volumeIn,
  volumeUnit,
  volumeUnitInFull,
} from '../units/units.ts';
import { contentWord, countCans, placeWords } from '../words/plan-words.ts';
import { saidIn } from '../words/said.ts';
import { edgeName, severityOf, VERDICT_WORDS } from '../words/words.ts';
import { WhatIfDetails } from './WhatIfDetails.tsx';

/** A row with its place in the list: two of one kind may happen at one place. */
interface NumberedRow {
  key: string;
  row: WhatIfRow;
}

interface WhatIfTableProps {
  rows: readonly WhatIfRow[];
  units: UnitSystem;
  kind: FuelKind;
  /** Name of the route, fit for a file. */
  file: string;
  onFocus: (next: Partial<Focus>) => void;
}

const keyOf = ({ key }: NumberedRow): string => key;

/** Everything that may go wrong, a row each: where it ends, what is left, what would have covered it. */
export function WhatIfTable({ rows, units, kind, file, onFocus }: WhatIfTableProps) {
  const [chosen, setChosen] = useState<string | null>(null);
  const numbered = useMemo(
    () => rows.map((row, place) => ({ row, key: `${place} ${row.kind} ${row.commodity}` })),
    [rows],
  );
  const columns = useMemo(() => columnsFor(units, kind), [units, kind]);
  const csv = useMemo(
    () => ({ name: `${file}-what-if`, columns: csvColumnsFor(units, kind) }),
    [file, units, kind],
  );
  return (
    <DataTable
      caption={t('What if')}
      columns={columns}
      rows={numbered}
      rowKey={keyOf}
      selected={chosen}
      onSelect={(one) => {
        setChosen(one?.key ?? null);
        if (one !== null && one.row.atKm !== null) onFocus({ atKm: one.row.atKm });
      }}
      onPoint={(one) => onFocus({ atKm: one?.row.atKm ?? null })}
      details={({ row }) => <WhatIfDetails row={row} units={units} />}
      csv={csv}
      empty={t('There is no stretch to reckon.')}
    />
  );
}

function columnsFor(units: UnitSystem, kind: FuelKind): Column<NumberedRow>[] {
  return [
    {
      key: 'what',
      head: t('What happens'),
      width: '52%',
      value: ({ row }) => saidIn(units, row),
      cell: ({ row }) => (
        <>
          <span className={`swatch swatch-${row.commodity}`} aria-hidden="true" />
          {saidIn(units, row)}{' '}
          <span className="second">
            {contentWord(row.commodity, kind)}
            {row.atKm !== null && `, ${formatAtKm(row.atKm, units)}`}
          </span>
        </>
      ),
    },
    {
      key: 'left',
      head: t('left'),
      unit: volumeUnit(units),
      align: 'end',
      value: ({ row }) => row.arriveL,
      cell: ({ row }) => (
        <>
          {figureLitres(row.arriveL, units)}
          {row.endsAtKm !== null && (
            <span className="second">{tx`ends at${<br />}${formatAtKm(row.endsAtKm, units)}`}</span>
          )}
        </>
      ),
    },
    {
      key: 'verdict',
      head: t('Verdict'),
      align: 'end',
      value: ({ row }) => severityOf(row.verdict),
      cell: ({ row }) => (
        <>
          <VerdictMark verdict={row.verdict} />
          {row.coverCans > 0 && <span className="second">+{countCans(row.coverCans)}</span>}
        </>
      ),
    },
  ];
}

function csvColumnsFor(units: UnitSystem, kind: FuelKind): CsvColumn<NumberedRow>[] {
  const long = distanceUnit(units);
  const volume = volumeUnitInFull(units);
  const along = (km: number | null) => (km === null ? null : distanceIn(km, units));
  const litres = (amount: number | null) => (amount === null ? null : volumeIn(amount, units));
  return [
    { head: t('what happens'), value: ({ row }) => saidIn(units, row) },
    { head: t('kind'), value: ({ row }) => row.kind },
    { head: t('of'), value: ({ row }) => contentWord(row.commodity, kind) },
    { head: t('id'), value: ({ row }) => row.id },
    { head: t`at (${long} along)`, value: ({ row }) => along(row.atKm) },
    { head: t`lost (${volume})`, value: ({ row }) => litres(row.lostL) },
    { head: t('from'), value: ({ row }) => edgeName(row.from) },
    { head: t`from (${long} along)`, value: ({ row }) => along(row.from.atKm) },
    { head: t('to'), value: ({ row }) => edgeName(row.to) },
    { head: t`to (${long} along)`, value: ({ row }) => along(row.to.atKm) },
    { head: t('better'), value: ({ row }) => row.next },
    { head: t('verdict'), value: ({ row }) => VERDICT_WORDS[row.verdict] },
    { head: t`left on arrival (${volume})`, value: ({ row }) => litres(row.arriveL) },
    { head: t`margin (${volume})`, value: ({ row }) => litres(row.marginL) },
    { head: t`margin going back (${volume})`, value: ({ row }) => litres(row.backMarginL) },
    { head: t`ends at (${long} along)`, value: ({ row }) => along(row.endsAtKm) },
    { head: t`missing to arrive (${volume})`, value: ({ row }) => litres(row.missingL) },
    { head: t`missing to the reserve (${volume})`, value: ({ row }) => litres(row.coverL) },
    { head: t('cans that would cover it'), value: ({ row }) => row.coverCans },
    { head: t`turn back before (${long} along)`, value: ({ row }) => along(row.turnBackKm) },
    {
      head: t('instead'),
      value: ({ row }) => (row.instead === null ? null : placeWords(row.instead.at, units)),
    },
  ];
}
