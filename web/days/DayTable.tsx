import { useMemo, useState } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { Day } from '../../server/contract/pace.ts';
import { fileName } from '../kit/save-file.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { Focus } from '../state/focus.ts';
import { type Column, type CsvColumn, DataTable } from '../table/DataTable.tsx';
import {
  distanceIn,
  distanceUnit,
  figureAtKm,
  figureLitres,
  formatAtKm,
  formatFigure,
  type UnitSystem,
  volumeIn,
  volumeUnit,
  volumeUnitInFull,
} from '../units/units.ts';
import { formatDate, formatLocalTime } from '../words/local-time.ts';

const HALT_WORDS: Record<Day['halt']['kind'], string> = {
  camp: t('camp'),
  pace: t('hours end'),
  stay: t('stay'),
  end: t('end of the route'),
};

const haltName = ({ halt }: Day): string => halt.name ?? HALT_WORDS[halt.kind];
const keyOf = (day: Day): string => String(day.day);

interface DayTableProps {
  analysis: Analysis;
  units: UnitSystem;
  onFocus: (next: Partial<Focus>) => void;
  onCamp: (atKm: number) => void;
  onRestDay: (atKm: number) => void;
}

/** The drive day by day at the slow pace; a row opened offers a camp or a rest day at its end. */
export function DayTable({ analysis, units, onFocus, onCamp, onRestDay }: DayTableProps) {
  const [chosen, setChosen] = useState<string | null>(null);
  const { rows, allListed } = analysis.days;
  const columns = useMemo(() => columnsFor(units), [units]);
  const csv = useMemo(
    () => ({ name: `${fileName(analysis.route.name)}-days`, columns: csvColumnsFor(units) }),
    [analysis.route.name, units],
  );
  return (
    <>
      <DataTable
        caption={t('Day by day, at the slow pace')}
        columns={columns}
        rows={rows}
        rowKey={keyOf}
        selected={chosen}
        onSelect={(day) => setChosen(day === null ? null : keyOf(day))}
        onPoint={(day) => onFocus({ atKm: day?.toKm ?? null })}
        details={(day) => (
          <div className="day-details">
            {day.arrive !== null && (
              <p>{tx`Its end is reached between ${formatLocalTime(day.arrive.earliest)} and ${formatLocalTime(day.arrive.latest)}.`}</p>
            )}
            {day.halt.kind !== 'end' && (
              <p className="actions">{tx`At ${formatAtKm(day.toKm, units)}: ${
                day.halt.kind === 'pace' && (
                  <button type="button" onClick={() => onCamp(day.toKm)}>
                    {t('Camp here')}
                  </button>
                )
              } ${(
                <button type="button" onClick={() => onRestDay(day.toKm)}>
                  {t('A rest day more here')}
                </button>
              )}`}</p>
            )}
          </div>
        )}
        csv={csv}
        empty={t('There is no day to drive.')}
      />
      {!allListed && (
        <p className="soft">{tx`The drive goes on for more days than the ${formatFigure(rows.length, 0)} listed.`}</p>
      )}
    </>
  );
}

function columnsFor(units: UnitSystem): Column<Day>[] {
  return [
    {
      key: 'day',
      head: t('Day'),
      value: ({ day }) => day,
      cell: ({ day, date }) => (
        <>
          {day} {date !== null && <span className="second">{formatDate(date)}</span>}
        </>
      ),
    },
    {
      key: 'to',
      head: t('to'),
      unit: distanceUnit(units),
      align: 'end',
      value: ({ toKm }) => toKm,
      cell: ({ fromKm, toKm }) => (
        <>
          {figureAtKm(toKm, units)} <span className="second">{tx`from ${figureAtKm(fromKm, units)}`}</span>
        </>
      ),
    },
    {
      key: 'hours',
      head: t('drive'),
      unit: 'h',
      align: 'end',
      value: ({ hours }) => hours,
      cell: ({ hours }) => formatFigure(hours, 1),
    },
    {
      key: 'night',
      head: t('Night'),
      value: haltName,
      cell: (day) => (
        <>
          {haltName(day)}
          {day.halt.name !== null && <span className="second">{HALT_WORDS[day.halt.kind]}</span>}
        </>
      ),
    },
    {
      key: 'fuel',
      head: t('fuel'),
      unit: volumeUnit(units),
      align: 'end',
      value: ({ fuelL }) => fuelL,
      cell: ({ fuelL }) => <Left litres={fuelL} units={units} />,
    },
    {
      key: 'water',
      head: t('water'),
      unit: volumeUnit(units),
      align: 'end',
      value: ({ waterL }) => waterL,
      cell: ({ waterL, waterByGrade }) => (
        <>
          <Left litres={waterL} units={units} />
          {waterByGrade !== null && waterByGrade.washingL !== 0 && (
            <>
              <span className="second graded">{tx`${figureLitres(waterByGrade.drinkingL, units)} to drink`}</span>
              <span className="second graded">{tx`${figureLitres(waterByGrade.washingL, units)} to wash`}</span>
            </>
          )}
        </>
      ),
    },
  ];
}

/** What is left; below nothing it is what lacks. */
function Left({ litres, units }: { litres: number; units: UnitSystem }) {
  if (litres >= 0) return figureLitres(litres, units);
  return <strong className="error">{figureLitres(litres, units)}</strong>;
}

function csvColumnsFor(units: UnitSystem): CsvColumn<Day>[] {
  const long = distanceUnit(units);
  const volume = volumeUnitInFull(units);
  return [
    { head: t('day'), value: ({ day }) => day },
    { head: t('date'), value: ({ date }) => date },
    { head: t`from (${long} along)`, value: ({ fromKm }) => distanceIn(fromKm, units) },
    { head: t`to (${long} along)`, value: ({ toKm }) => distanceIn(toKm, units) },
    { head: t('driving (h)'), value: ({ hours }) => hours },
    { head: t('night at'), value: haltName },
    { head: t('kind of halt'), value: ({ halt }) => HALT_WORDS[halt.kind] },
    { head: t('arrives at the earliest'), value: ({ arrive }) => arrive?.earliest ?? null },
    { head: t('arrives at the latest'), value: ({ arrive }) => arrive?.latest ?? null },
    { head: t`fuel left (${volume})`, value: ({ fuelL }) => volumeIn(fuelL, units) },
    { head: t`water left (${volume})`, value: ({ waterL }) => volumeIn(waterL, units) },
    {
      head: t`of it to drink (${volume})`,
      value: ({ waterByGrade }) => (waterByGrade === null ? null : volumeIn(waterByGrade.drinkingL, units)),
    },
    {
      head: t`of it to wash (${volume})`,
      value: ({ waterByGrade }) => (waterByGrade === null ? null : volumeIn(waterByGrade.washingL, units)),
    },
  ];
}
