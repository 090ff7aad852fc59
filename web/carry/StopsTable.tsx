import { useMemo, useState } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { Plan } from '../../server/contract/plan.ts';
import type { FuelKind } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { fileName } from '../kit/save-file.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { Focus } from '../state/focus.ts';
import { type Column, DataTable } from '../table/DataTable.tsx';
import {
  distanceIn,
  distanceUnit,
  figureLitres,
  formatAtKm,
  formatFigure,
  formatLitres,
  type UnitSystem,
  volumeIn,
  volumeUnit,
  volumeUnitInFull,
} from '../units/units.ts';
import { contentWord } from '../words/plan-words.ts';
import { StopFields } from './StopFields.tsx';

type Passing = Plan['stops'][number]['passings'][number];
/** A passing of the plan, or of a stop that it has none of. */
type StopRow = Omit<Passing, 'atKm' | 'detourKm' | 'evidence'> & { atKm: number | null };

interface StopsTableProps {
  plan: Plan;
  analysis: Analysis;
  trip: TripFile;
  units: UnitSystem;
  onFocus: (next: Partial<Focus>) => void;
}

const COMMODITIES = ['fuel', 'water'] as const;
const keyOf = ({ id, commodity, atKm }: StopRow): string => `${id} ${commodity} ${atKm}`;

/** Every stop that the plan chose among: used or passed by, what is filled there, what is told of it. */
export function StopsTable({ plan, analysis, trip, units, onFocus }: StopsTableProps) {
  const [chosen, setChosen] = useState<string | null>(null);
  const rows = useMemo(() => stopRows(plan, analysis, trip), [plan, analysis, trip]);
  const { kind } = analysis.rig.fuel;
  const found = plan.status === 'found';
  const passed = trip.plan?.passBy;
  const columns = useMemo(() => columnsFor(units, kind, found, passed), [units, kind, found, passed]);
  const csv = useMemo(
    () => ({ name: `${fileName(analysis.route.name)}-stops`, columns: csvColumnsFor(units, kind) }),
    [analysis, units, kind],
  );
  if (rows.length === 0) return null;
  return (
    <DataTable
      caption={found ? t('Stops of the plan') : t('Stops that count')}
      columns={columns}
      rows={rows}
      rowKey={keyOf}
      selected={chosen}
      onSelect={(one) => setChosen(one === null ? null : keyOf(one))}
      onPoint={(one) => onFocus({ atKm: one?.atKm ?? null })}
      details={({ id, commodity, atKm }) => (
        <StopFields id={id} commodities={atKm === null ? COMMODITIES : [commodity]} />
      )}
      csv={csv}
      empty=""
    />
  );
}

const UNKNOWN = {
  used: false,
  arriveL: null,
  fillL: null,
  cansFull: null,
  mostL: null,
  waitHours: 0,
  fillHours: 0,
};

/** The passings of the plan, or without one those that count, and whatever else is told of: that must stay in reach. */
function stopRows(plan: Plan, { passings }: Analysis, trip: TripFile): StopRow[] {
  const bare = (chosen: typeof passings): StopRow[] =>
    chosen.map(({ id, name, kind, commodity, atKm }) => ({ id, name, kind, commodity, atKm, ...UNKNOWN }));
  const rows: StopRow[] =
    plan.status === 'found'
      ? plan.stops.flatMap((stop) => stop.passings)
      : bare(passings.filter(({ counts }) => counts));
  const { passBy = [], mustStop = [], stops = [] } = trip.plan ?? {};
  const told = [...passBy, ...mustStop, ...stops.map(({ id }) => id)];
  const missing = [...new Set(told)].filter((id) => !rows.some((row) => row.id === id));
  return [
    ...rows,
    ...missing.flatMap((id): StopRow[] => {
      const met = bare(passings.filter((passing) => passing.id === id));
      return met.length > 0 ? met : [{ id, name: null, kind: id, commodity: 'fuel', atKm: null, ...UNKNOWN }];
    }),
  ];
}

const nameOf = ({ name, kind }: StopRow): string => name ?? kind;

function whetherUsed({ id, used, atKm }: StopRow, found: boolean, passed: readonly string[]): string {
  if (used) return t(', used');
  if (atKm === null) return t(' not on this route');
  if (passed.includes(id)) return t(', passed by as told');
  return found ? t(', passed by') : '';
}

const hours = (amount: number): string => formatFigure(amount, 1);

function columnsFor(
  units: UnitSystem,
  kind: FuelKind,
  found: boolean,
  passed: readonly string[] = [],
): Column<StopRow>[] {
  const volume = volumeUnit(units);
  const litres = (amount: number | null) => (amount === null ? '' : figureLitres(amount, units));
  return [
    {
      key: 'stop',
      head: t('Place'),
      width: '46%',
      value: ({ atKm }) => atKm,
      cell: (row) => (
        <>
          <span className={`swatch swatch-${row.commodity}`} aria-hidden="true" />
          {row.used ? <b>{nameOf(row)}</b> : nameOf(row)}{' '}
          <span className="second">
            {row.atKm !== null && `${formatAtKm(row.atKm, units)}, ${contentWord(row.commodity, kind)}`}
            {whetherUsed(row, found, passed)}
          </span>
        </>
      ),
    },
    {
      key: 'arrives',
      head: t('arrives'),
      unit: volume,
      align: 'end',
      value: ({ arriveL }) => arriveL,
      cell: ({ arriveL }) => litres(arriveL),
    },
    {
      key: 'fill',
      head: t('fill'),
      unit: volume,
      align: 'end',
      value: ({ fillL }) => fillL,
      cell: ({ fillL, mostL }) => (
        <>
          {litres(fillL)}
          {mostL !== null && <span className="second">{tx`of ${formatLitres(mostL, units)}`}</span>}
        </>
      ),
    },
    {
      key: 'cans',
      head: t('cans'),
      align: 'end',
      value: ({ cansFull }) => cansFull,
      cell: ({ cansFull }) => cansFull,
    },
    {
      key: 'wait',
      head: t('wait'),
      unit: 'h',
      align: 'end',
      value: ({ waitHours, fillHours }) => waitHours + fillHours,
      cell: ({ waitHours, fillHours }) => (
        <>
          {waitHours + fillHours > 0 && hours(waitHours + fillHours)}
          {fillHours > 0 && <span className="second">{tx`${hours(fillHours)} filling`}</span>}
        </>
      ),
    },
  ];
}

function csvColumnsFor(units: UnitSystem, kind: FuelKind) {
  const volume = volumeUnitInFull(units);
  const litres = (amount: number | null) => (amount === null ? null : volumeIn(amount, units));
  return [
    { head: t('stop'), value: nameOf },
    { head: t('id'), value: ({ id }: StopRow) => id },
    { head: t('of'), value: ({ commodity }: StopRow) => contentWord(commodity, kind) },
    {
      head: t`at (${distanceUnit(units)} along)`,
      value: ({ atKm }: StopRow) => (atKm === null ? null : distanceIn(atKm, units)),
    },
    { head: t('used'), value: ({ used }: StopRow) => (used ? t('yes') : t('answer|no')) },
    { head: t`arrives with (${volume})`, value: ({ arriveL }: StopRow) => litres(arriveL) },
    { head: t`fill (${volume})`, value: ({ fillL }: StopRow) => litres(fillL) },
    { head: t`most to be had (${volume})`, value: ({ mostL }: StopRow) => litres(mostL) },
    { head: t('cans full on leaving'), value: ({ cansFull }: StopRow) => cansFull },
    { head: t('waiting (h)'), value: ({ waitHours }: StopRow) => waitHours },
    { head: t('filling (h)'), value: ({ fillHours }: StopRow) => fillHours },
  ];
}
