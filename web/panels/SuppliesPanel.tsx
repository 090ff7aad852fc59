import { useMemo, useState } from 'react';
import type { Analysis, Passing } from '../../server/contract/analysis.ts';
import type { MapData } from '../../server/contract/answers/map.ts';
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
import { KnownOfStop, StopName, StopSupplies, SupplyName } from './StopSupplies.tsx';
import { SupplyDetails } from './SupplyDetails.tsx';
import {
  holds,
  isStopKey,
  keySupplies,
  type NamedPlace,
  nameOf,
  placeNear,
  placesOf,
  type SupplyRow,
  singlesOf,
  stopsOf,
} from './stops.ts';

interface SuppliesPanelProps {
  analysis: Analysis;
  /** Its towns and villages are what stops are called by. */
  map: MapData;
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
  const { passings } = props.analysis;
  const [shown, setShown] = useState<Shown>('all');
  const [counting, setCounting] = useState<CountingChoice>('all');
  const singles = useMemo(
    () =>
      passings
        .map((passing, index): SupplyRow => ({ passing, key: `${index} ${passing.id}`, members: [] }))
        .filter(({ passing }) => shown === 'all' || passing.commodity === shown)
        .filter(({ passing }) => counting === 'all' || passing.counts === (counting === 'counts')),
    [passings, shown, counting],
  );
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
            <option value="does not">{countsWords(false)}</option>
          </select>
        </label>
      </div>
      <SupplyTable {...props} singles={singles} />
    </>
  );
}

/** The table's row that is open, and the supply in it. */
function useOpenRow(singles: readonly SupplyRow[], selected: string | null) {
  const [chosenKey, setChosenKey] = useState<string | null>(null);
  // A point chosen on the map has no passing of its own: its first row opens, unless one of its rows is open already.
  const chosen = singles.find((row) => row.key === chosenKey && row.passing.id === selected);
  const open = chosen ?? (selected === null ? undefined : singles.find((row) => row.passing.id === selected));
  // A stop may be unfolded while none of its supplies is.
  const openKey = open?.key ?? (selected === null && isStopKey(chosenKey) ? chosenKey : null);
  return { openKey, choose: setChosenKey };
}

/** Supplies by stops; what is looked for, and what is saved, are single ones. */
function SupplyTable(props: SuppliesPanelProps & { singles: readonly SupplyRow[] }) {
  const { analysis, map, units, selected, onFocus, singles } = props;
  const { openKey, choose } = useOpenRow(singles, selected);
  const rows = useMemo(() => stopsOf(singles), [singles]);
  const places = useMemo(() => placesOf(map), [map]);
  const matter = useMemo(() => matterOf(analysis), [analysis]);
  const columns = useMemo(() => columnsFor(units, places, matter.of), [units, places, matter]);
  const findBy = useMemo(() => findByIn(units), [units]);
  const csv = useMemo(
    () => ({ name: `${fileName(analysis.route.name)}-supplies`, columns: csvColumnsFor(units) }),
    [analysis.route.name, units],
  );
  const onSelect = (row: SupplyRow | null) => {
    choose(row?.key ?? null);
    const isStop = row !== null && row.members.length > 0;
    const supply = row === null || isStop ? null : row.passing.id;
    onFocus({ supply, ...(row !== null && { atKm: row.passing.atKm }) });
  };
  const details = ({ passing }: SupplyRow) => (
    <SupplyDetails
      {...{ passing, units }}
      safeForSkin={props.washingSources.includes(passing.id)}
      onFound={props.onFound}
    />
  );
  const ofStops = rows.length === singles.length ? '' : t`, at ${rows.length} stops`;
  return (
    <DataTable
      caption={t`Supplies: ${singles.length}${ofStops}`}
      {...{ rows, singles, columns, matter, findBy, csv, holds, onSelect }}
      rowKey={keyOf}
      selected={openKey}
      onPoint={(row) => onFocus({ atKm: row?.passing.atKm ?? null })}
      details={(row) =>
        row.members.length === 0 ? (
          details(row)
        ) : (
          <StopSupplies {...{ units }} stop={row} open={openKey} onOpen={(member) => onSelect(member ?? row)}>
            {details}
          </StopSupplies>
        )
      }
      empty={t('No supply of this kind lies within the corridor.')}
    />
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
  const matters = ({ passing: { commodity, id, atKm } }: SupplyRow) =>
    keys.has(`${commodity} ${id} ${atKm}`) ||
    trouble.some(({ fromKm, toKm, ...gap }) => gap.commodity === commodity && fromKm <= atKm && atKm <= toKm);
  return {
    words: t('What the answer stands on'),
    of: (row) => singlesOf(row).some(matters),
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

function columnsFor(
  units: UnitSystem,
  places: readonly NamedPlace[],
  matters: (row: SupplyRow) => boolean,
): Column<SupplyRow>[] {
  const unit = distanceUnit(units);
  const leastDetour = (row: SupplyRow) => Math.min(...singlesOf(row).map(({ passing }) => passing.detourKm));
  return [
    {
      key: 'name',
      head: t('Supply'),
      width: '36%',
      value: ({ passing }) => nameOf(passing),
      cell: (row) =>
        row.members.length === 0 ? (
          <SupplyName row={row} />
        ) : (
          <StopName stop={row} place={placeNear(row, places)} named={keySupplies(row, matters)} />
        ),
    },
    {
      ...{ key: 'at', head: t('at'), unit, align: 'end' },
      value: ({ passing }) => passing.atKm,
      cell: ({ passing }) => figureAtKm(passing.atKm, units),
    },
    {
      ...{ key: 'detour', head: t('detour'), unit, align: 'end' },
      value: leastDetour,
      cell: (row) => figureKm(leastDetour(row), units),
    },
    {
      ...{ key: 'evidence', head: t('Known'), align: 'end', width: '36%' },
      // A stop is known as its best supply is.
      value: (row) =>
        Math.min(
          ...singlesOf(row).map(({ passing }) => strengthOf(passing.evidence) + (passing.counts ? 0 : 10)),
        ),
      cell: (row) => (row.members.length === 0 ? knownCell(row.passing, units) : <KnownOfStop stop={row} />),
    },
  ];
}

function knownCell({ counts, evidence, reasons: [reason] }: Passing, units: UnitSystem) {
  return (
    <>
      <span className={counts ? 'counts' : 'counts-not'}>{countsWords(counts)}</span>{' '}
      <span className="second">
        {counts || reason === undefined ? EVIDENCE_WORDS[evidence] : saidIn(units, reason)}
      </span>
    </>
  );
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
