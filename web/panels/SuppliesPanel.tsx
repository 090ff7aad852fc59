import { useMemo, useState } from 'react';
import type { Analysis, Passing } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import { fileName } from '../kit/save-file.ts';
import { t } from '../language/t.ts';
import type { Finding } from '../notes/findings.ts';
import type { Focus } from '../state/focus.ts';
import { type Column, type CsvColumn, DataTable } from '../table/DataTable.tsx';
import type { FindBy, Matter } from '../table/narrow.ts';
import { distanceIn, distanceUnit, figureAtKm, figureKm, type UnitSystem } from '../units/units.ts';
import { saidIn } from '../words/said.ts';
import { countsWords, EVIDENCE_WORDS, strengthOf, WATER_CLASS_WORDS } from '../words/words.ts';
import { SupplyDetails } from './SupplyDetails.tsx';

export interface SupplyRow {
  /** The same point can be passed more than once: its place in the list tells the passings apart. */
  key: string;
  passing: Passing;
}

interface SuppliesPanelProps {
  analysis: Analysis;
  units: UnitSystem;
  selected: string | null;
  onFocus: (next: Partial<Focus>) => void;
  /** Notes what the user found out about a point. */
  onFound: (passing: Passing, finding: Finding) => void;
  /** Ids of the waters that the user marked safe for skin. */
  washingSources: readonly string[];
}

const COMMODITIES = ['fuel', 'water'] as const;
const SHOWN = ['all', 'fuel', 'water'] as const;
const COUNTING = ['all', 'counts', 'does not'] as const;
type Shown = (typeof SHOWN)[number];
type CountingChoice = (typeof COUNTING)[number];

const keyOf = (row: SupplyRow): string => row.key;

export function SuppliesPanel(props: SuppliesPanelProps) {
  const { analysis, units, selected, onFocus, onFound, washingSources } = props;
  const [shown, setShown] = useState<Shown>('all');
  const [counting, setCounting] = useState<CountingChoice>('all');
  const [chosenKey, setChosenKey] = useState<string | null>(null);

  const rows = useMemo(
    () =>
      analysis.passings
        .map((passing, index) => ({ passing, key: `${index} ${passing.id}` }))
        .filter(({ passing }) => shown === 'all' || passing.commodity === shown)
        .filter(({ passing }) => counting === 'all' || passing.counts === (counting === 'counts')),
    [analysis.passings, shown, counting],
  );
  const columns = useMemo(() => columnsFor(units), [units]);
  const matter = useMemo(() => matterOf(analysis), [analysis]);
  const findBy = useMemo(() => findByIn(units), [units]);
  const csv = useMemo(
    () => ({ name: `${fileName(analysis.route.name)}-supplies`, columns: csvColumnsFor(units) }),
    [analysis.route.name, units],
  );

  // A point chosen on the map has no passing of its own: its first row opens, unless one of its rows is open already.
  const chosen = rows.find((row) => row.key === chosenKey && row.passing.id === selected);
  const open = chosen ?? (selected === null ? undefined : rows.find((row) => row.passing.id === selected));

  return (
    <>
      <div className="filters">
        <label>
          {t('Show')}{' '}
          <select value={shown} onChange={(event) => setShown(oneOf(SHOWN, event.target.value))}>
            <option value="all">{t('fuel and water')}</option>
            <option value="fuel">{t('fuel')}</option>
            <option value="water">{t('water')}</option>
          </select>
        </label>
        <label>
          {t('that')}{' '}
          <select value={counting} onChange={(event) => setCounting(oneOf(COUNTING, event.target.value))}>
            <option value="all">{t('relied on or not')}</option>
            <option value="counts">{countsWords(true)}</option>
            <option value={t('does not')}>{countsWords(false)}</option>
          </select>
        </label>
      </div>
      <DataTable
        caption={t`Supplies: ${rows.length}`}
        columns={columns}
        rows={rows}
        rowKey={keyOf}
        selected={open?.key ?? null}
        onSelect={(row) => {
          setChosenKey(row?.key ?? null);
          onFocus({ supply: row?.passing.id ?? null, ...(row === null ? {} : { atKm: row.passing.atKm }) });
        }}
        onPoint={(row) => onFocus({ atKm: row?.passing.atKm ?? null })}
        details={(row) => (
          <SupplyDetails
            passing={row.passing}
            units={units}
            safeForSkin={washingSources.includes(row.passing.id)}
            onFound={onFound}
          />
        )}
        {...{ matter, findBy, csv }}
        empty={t('No supply of this kind lies within the corridor.')}
      />
    </>
  );
}

/** What the answer stands on: the ends of stretches in trouble and of the longest, and what lies in trouble and is not relied on. */
function matterOf(analysis: Analysis): Matter<SupplyRow> {
  const keys = new Set<string>();
  const trouble: { commodity: Commodity; fromKm: number; toKm: number }[] = [];
  for (const commodity of COMMODITIES) {
    const { gaps, longest } = analysis[commodity];
    for (const [index, { from, to, verdict }] of gaps.entries()) {
      if (verdict === 'enough' && index !== longest) continue;
      for (const { id, atKm } of [from, to]) keys.add(`${commodity} ${id} ${atKm}`);
      if (verdict !== 'enough') trouble.push({ commodity, fromKm: from.atKm, toKm: to.atKm });
    }
  }
  return {
    words: t('What the answer stands on'),
    of: ({ passing: { commodity, id, atKm } }) =>
      keys.has(`${commodity} ${id} ${atKm}`) ||
      trouble.some(
        ({ fromKm, toKm, ...gap }) => gap.commodity === commodity && fromKm <= atKm && atKm <= toKm,
      ),
    rest: (count) => t`and ${count} more`,
  };
}

const findByIn = (units: UnitSystem): FindBy<SupplyRow> => ({
  of: ({ passing }) => {
    const at = distanceIn(passing.atKm, units);
    return { text: `${nameOf(passing)} ${passing.id}`, from: at, to: at };
  },
  unit: distanceUnit(units),
});

function oneOf<T extends string>(allowed: readonly [T, ...T[]], value: string): T {
  return allowed.find((each) => each === value) ?? allowed[0];
}

const nameOf = (passing: Passing): string => passing.name ?? passing.kind;

function columnsFor(units: UnitSystem): Column<SupplyRow>[] {
  const long = distanceUnit(units);
  return [
    {
      key: 'name',
      head: t('Supply'),
      width: '36%',
      value: ({ passing }) => nameOf(passing),
      cell: ({ passing }) => (
        <>
          <span className={`swatch swatch-${passing.commodity}${passing.counts ? '' : ' hollow'}`} />
          <span className="only-read">{passing.commodity}: </span>
          {nameOf(passing)}{' '}
          <span className="second">{passing.name === null ? passing.id : passing.kind}</span>
        </>
      ),
    },
    {
      key: 'at',
      head: t('at'),
      unit: long,
      align: 'end',
      value: ({ passing }) => passing.atKm,
      cell: ({ passing }) => figureAtKm(passing.atKm, units),
    },
    {
      key: 'detour',
      head: t('detour'),
      unit: long,
      align: 'end',
      value: ({ passing }) => passing.detourKm,
      cell: ({ passing }) => figureKm(passing.detourKm, units),
    },
    {
      key: 'evidence',
      head: t('Known'),
      align: 'end',
      width: '36%',
      value: ({ passing }) => strengthOf(passing.evidence) + (passing.counts ? 0 : 10),
      cell: ({
        passing,
        passing: {
          reasons: [reason],
        },
      }) => (
        <>
          <span className={passing.counts ? 'counts' : 'counts-not'}>{countsWords(passing.counts)}</span>{' '}
          <span className="second">
            {passing.counts || reason === undefined
              ? EVIDENCE_WORDS[passing.evidence]
              : saidIn(units, reason)}
          </span>
        </>
      ),
    },
  ];
}

function csvColumnsFor(units: UnitSystem): CsvColumn<SupplyRow>[] {
  const long = distanceUnit(units);
  return [
    { head: t('id'), value: ({ passing }) => passing.id },
    { head: t('also known as'), value: ({ passing }) => passing.alsoIds.join(' ') },
    { head: t('name'), value: ({ passing }) => passing.name },
    { head: t('commodity'), value: ({ passing }) => passing.commodity },
    { head: t('kind'), value: ({ passing }) => passing.kind },
    {
      head: t('water class'),
      value: ({ passing }) =>
        passing.waterClass === undefined ? null : WATER_CLASS_WORDS[passing.waterClass],
    },
    { head: t`at (${long} along)`, value: ({ passing }) => distanceIn(passing.atKm, units) },
    { head: t`off the route (${long})`, value: ({ passing }) => distanceIn(passing.offRouteKm, units) },
    { head: t`detour one way (${long})`, value: ({ passing }) => distanceIn(passing.detourKm, units) },
    { head: t('evidence'), value: ({ passing }) => EVIDENCE_WORDS[passing.evidence] },
    { head: t('relied on'), value: ({ passing }) => passing.counts },
    {
      head: t('reasons'),
      value: ({ passing }) => passing.reasons.map((reason) => saidIn(units, reason)).join('; '),
    },
    { head: t('longitude (degrees)'), value: ({ passing }) => passing.lon },
    { head: t('latitude (degrees)'), value: ({ passing }) => passing.lat },
  ];
}
