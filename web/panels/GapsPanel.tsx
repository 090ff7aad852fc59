import { Fragment, useMemo } from 'react';
import type { Analysis, Gap } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import { Sentences } from '../answer/Sentences.tsx';
import { fileName } from '../kit/save-file.ts';
import { VerdictMark } from '../kit/VerdictMark.tsx';
import { plural, t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { Focus } from '../state/focus.ts';
import { type Column, type CsvColumn, DataTable } from '../table/DataTable.tsx';
import type { FindBy, Matter } from '../table/narrow.ts';
import {
  distanceIn,
  distanceUnit,
  figureKm,
  figureLitres,
  formatDays,
  type UnitSystem,
  volumeIn,
  volumeUnit,
  volumeUnitInFull,
} from '../units/units.ts';
import {
  capitalised,
  commodityWords,
  edgeName,
  FUEL_WORDS,
  severityOf,
  VERDICT_WORDS,
} from '../words/words.ts';
import { GapDetails } from './GapDetails.tsx';

interface GapRow {
  index: number;
  gap: Gap;
}

interface GapsPanelProps {
  analysis: Analysis;
  units: UnitSystem;
  selected: Focus['gap'];
  onFocus: (next: Partial<Focus>) => void;
}

export function GapsPanel({ analysis, units, selected, onFocus }: GapsPanelProps) {
  const fuel = FUEL_WORDS[analysis.rig.fuel.kind];
  return (
    <>
      <section className="in-words" aria-label={t('The answer in words')}>
        <p className="says">{t('With full tanks at every supply that is relied on, and empty cans:')}</p>
        {(['fuel', 'water'] as const).map((commodity) => (
          <Fragment key={commodity}>
            <h3>
              <span className={`swatch swatch-${commodity}`} aria-hidden="true" />
              {capitalised(commodityWords(commodity, analysis.rig.fuel.kind))}
            </h3>
            <Sentences sentences={analysis.answer[commodity]} units={units} />
          </Fragment>
        ))}
      </section>
      <GapTable caption={t`Fuel: ${fuel}`} commodity="fuel" {...{ analysis, units, selected, onFocus }} />
      <GapTable caption={t('Drinking water')} commodity="water" {...{ analysis, units, selected, onFocus }} />
    </>
  );
}

/** Where a stretch is decided: where it runs dry, else where it meets the reserve, else its middle. */
const tellingKm = (gap: Gap): number =>
  gap.runsDryKm ?? gap.reserveFromKm ?? (gap.from.atKm + gap.to.atKm) / 2;

const keyOf = (row: GapRow): string => String(row.index);

function GapTable(props: GapsPanelProps & { caption: string; commodity: Commodity }) {
  const { analysis, units, selected, onFocus, commodity } = props;
  const { passings } = analysis;
  const report = analysis[commodity];
  const rows = useMemo(() => report.gaps.map((gap, index) => ({ gap, index })), [report]);
  const columns = useMemo(() => columnsFor(units), [units]);
  const matter = useMemo(() => matterOf(rows), [rows]);
  const findBy = useMemo(() => findByIn(units), [units]);
  const csv = useMemo(
    () => ({
      name: `${fileName(analysis.route.name)}-${commodity}-gaps`,
      columns: csvColumnsFor(units),
    }),
    [analysis.route.name, commodity, units],
  );
  return (
    <DataTable
      caption={props.caption}
      columns={columns}
      rows={rows}
      rowKey={keyOf}
      selected={selected?.commodity === commodity ? String(selected.index) : null}
      onSelect={(row) => onFocus({ gap: row === null ? null : { commodity, index: row.index } })}
      onPoint={(row) => onFocus({ atKm: row === null ? null : tellingKm(row.gap) })}
      details={(row) => <GapDetails gap={row.gap} canL={report.canL} {...{ commodity, passings, units }} />}
      {...{ matter, findBy, csv }}
      empty={t('There is no stretch to reckon.')}
    />
  );
}

/** Stretches that are enough are named for being long: so many of them (ours). */
const LONGEST = 5;

/** Trouble, and the longest of the others. */
function matterOf(rows: readonly GapRow[]): Matter<GapRow> {
  const longest = new Set(rows.toSorted((a, b) => b.gap.lengthKm - a.gap.lengthKm).slice(0, LONGEST));
  return {
    words: rows.some(isTrouble) ? t('Trouble and longest') : t('Longest'),
    of: (row) => isTrouble(row) || longest.has(row),
    order: (a, b) =>
      Number(isTrouble(b)) - Number(isTrouble(a)) ||
      (isTrouble(a) ? a.index - b.index : b.gap.lengthKm - a.gap.lengthKm),
    rest: (count) => t`and ${count} more, all enough`,
  };
}

const isTrouble = ({ gap }: GapRow): boolean => gap.verdict !== 'enough';

const findByIn = (units: UnitSystem): FindBy<GapRow> => ({
  of: ({ gap }) => ({
    text: `${edgeName(gap.from)} ${edgeName(gap.to)}`,
    from: distanceIn(gap.from.atKm, units),
    to: distanceIn(gap.to.atKm, units),
  }),
  unit: distanceUnit(units),
});

function columnsFor(units: UnitSystem): Column<GapRow>[] {
  return [
    {
      key: 'stretch',
      head: t('Stretch'),
      value: ({ gap }) => gap.from.atKm,
      cell: ({ gap }) => (
        <>
          {edgeName(gap.from)} <span className="second">{tx`to ${edgeName(gap.to)}`}</span>
        </>
      ),
    },
    {
      key: 'length',
      head: distanceUnit(units),
      align: 'end',
      value: ({ gap }) => gap.lengthKm,
      cell: ({ gap }) => (
        <>
          {figureKm(gap.lengthKm, units)} <span className="second">{formatDays(gap.days)}</span>
        </>
      ),
    },
    {
      key: 'need',
      head: t('needs'),
      unit: volumeUnit(units),
      align: 'end',
      value: ({ gap }) => gap.needL,
      cell: ({ gap }) => figureLitres(gap.needL, units),
    },
    {
      key: 'left',
      head: t('left'),
      unit: volumeUnit(units),
      align: 'end',
      value: ({ gap }) => gap.arriveL,
      cell: ({ gap }) => figureLitres(gap.arriveL, units),
    },
    {
      key: 'verdict',
      head: t('Verdict'),
      align: 'end',
      value: ({ gap }) => severityOf(gap.verdict),
      cell: ({ gap }) => (
        <>
          <VerdictMark verdict={gap.verdict} />
          {gap.extraCans > 0 && (
            <span className="second">
              +{gap.extraCans} {plural(gap.extraCans, t('can'), t('cans'))}
            </span>
          )}
        </>
      ),
    },
  ];
}

function csvColumnsFor(units: UnitSystem): CsvColumn<GapRow>[] {
  const long = distanceUnit(units);
  const volume = volumeUnitInFull(units);
  const distance = (km: number | null) => (km === null ? null : distanceIn(km, units));
  const litres = (amount: number) => volumeIn(amount, units);
  return [
    { head: t('from'), value: ({ gap }) => edgeName(gap.from) },
    { head: t('from id'), value: ({ gap }) => gap.from.id },
    { head: t`from (${long} along)`, value: ({ gap }) => distance(gap.from.atKm) },
    { head: t('to'), value: ({ gap }) => edgeName(gap.to) },
    { head: t('to id'), value: ({ gap }) => gap.to.id },
    { head: t`to (${long} along)`, value: ({ gap }) => distance(gap.to.atKm) },
    { head: t`length (${long})`, value: ({ gap }) => distance(gap.lengthKm) },
    { head: t`way (${long})`, value: ({ gap }) => distance(gap.wayKm) },
    { head: t('days'), value: ({ gap }) => gap.days },
    { head: t`needs (${volume})`, value: ({ gap }) => litres(gap.needL) },
    { head: t`reserve (${volume})`, value: ({ gap }) => litres(gap.reserveL) },
    { head: t`left on arrival (${volume})`, value: ({ gap }) => litres(gap.arriveL) },
    { head: t`margin (${volume})`, value: ({ gap }) => litres(gap.marginL) },
    { head: t('verdict'), value: ({ gap }) => VERDICT_WORDS[gap.verdict] },
    { head: t('across no data'), value: ({ gap }) => gap.acrossNoData },
    { head: t('weakest evidence'), value: ({ gap }) => gap.weakest },
    { head: t`extra (${volume})`, value: ({ gap }) => litres(gap.extraL) },
    { head: t('extra cans'), value: ({ gap }) => gap.extraCans },
    { head: t`turn back before (${long} along)`, value: ({ gap }) => distance(gap.turnBackKm) },
    { head: t('skip helps'), value: ({ gap }) => gap.skipHelps },
    {
      head: t('if the next supply fails'),
      value: ({ gap }) => (gap.ifToFails === null ? null : VERDICT_WORDS[gap.ifToFails.verdict]),
    },
  ];
}
