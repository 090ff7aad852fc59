import type { FuelInterval, FuelLog, LogLeftOut } from '../../contract/log.ts';
import { SURFACES, type Surface } from '../../contract/surface.ts';
import type { LogColumns } from './columns.ts';
import type { CsvTable } from './csv.ts';
import { few } from './few.ts';
import { readFills } from './fills.ts';
import { fuelCautions } from './fuel-cautions.ts';
import { type BareInterval, intervalsOf } from './intervals.ts';
import { logFault } from './log-fault.ts';
import { fencesOf, isOutlier, LEAST_COUNT, PERCENTILE_WORDS, ratesOf } from './percentile.ts';
import { ratesYaml } from './rate-yaml.ts';

/** What a log of fill-ups tells of fuel use. Throws InputProblem. */
export function learnFuel(
  table: CsvTable,
  columns: LogColumns,
  source: string,
  onSurface: Surface | null,
): FuelLog {
  const { fills, turned } = readFills(table, columns);
  const { intervals: bare, leftOut } = intervalsOf(fills, onSurface);
  if (bare.length < LEAST_COUNT)
    throw tooFew(
      bare,
      leftOut,
      fills.some((fill) => fill.full),
    );
  const rates = bare.map((interval) => interval.litresPer100Km);
  const litresPer100Km = ratesOf(rates);
  const fences = fencesOf(rates);
  const intervals = bare.map((interval): FuelInterval => {
    return { ...interval, outlier: isOutlier(interval.litresPer100Km, fences) };
  });
  const km = sumOf(bare, (interval) => interval.km);
  const litres = sumOf(bare, (interval) => interval.litres);
  const observed = observedOn(bare, km);
  const learned = {
    kind: 'fuel' as const,
    source,
    lines: fills.length,
    units: { distance: columns.distance, volume: columns.volume },
    intervals,
    leftOut,
    litresPer100Km,
    fences,
    total: { km, litres, litresPer100Km: (litres / km) * 100 },
    observed,
    bySurface: bySurface(bare),
    method: [
      'An interval runs from one full tank to the next; all that was filled after the first, part fills included, was used in it.',
      ...PERCENTILE_WORDS('interval'),
    ],
    unreadColumns: columns.unread,
    yaml: yamlOf(bare.length, km, litresPer100Km, observed),
  };
  return { ...learned, cautions: fuelCautions(learned, fills, turned) };
}

const sumOf = (intervals: readonly BareInterval[], figure: (interval: BareInterval) => number): number =>
  intervals.reduce((sum, interval) => sum + figure(interval), 0);

/** A refusal is one line: of more than this the rest are counted. */
const NAMED = 5;

function tooFew(intervals: readonly BareInterval[], leftOut: readonly LogLeftOut[], anyFull: boolean) {
  const found = few(
    intervals.map(({ fromLine, toLine }) => `lines ${fromLine} to ${toLine}`),
    NAMED,
  );
  const left = few(
    leftOut.map(({ fromLine, toLine, text }) => {
      return `${fromLine === toLine ? `line ${fromLine}` : `lines ${fromLine} to ${toLine}`} ${text}`;
    }),
    NAMED,
    '; ',
  );
  // The first full tank of all begins an interval and ends none.
  const missing = LEAST_COUNT - intervals.length + (anyFull ? 0 : 1);
  return logFault(
    null,
    `${intervals.length} intervals from full tank to full tank${found === '' ? '' : ` (${found})`}${left === '' ? '' : `; left out: ${left}`}`,
    `at least ${LEAST_COUNT}`,
    `Fill up ${missing} more ${missing === 1 ? 'time' : 'times'} and write it down`,
  );
}

/** Surface and mass of the whole: told by every interval, or not at all. */
function observedOn(intervals: readonly BareInterval[], km: number): FuelLog['observed'] {
  const surface = intervals[0]?.surface ?? null;
  const isSame = intervals.every((interval) => interval.surface === surface);
  const isWeighed = intervals.every((interval) => interval.massKg !== null);
  return {
    surface: isSame ? surface : null,
    massKg: isWeighed ? sumOf(intervals, (interval) => (interval.massKg ?? 0) * interval.km) / km : null,
  };
}

function bySurface(intervals: readonly BareInterval[]): FuelLog['bySurface'] {
  return [...SURFACES, null].flatMap((surface) => {
    const of = intervals.filter((interval) => interval.surface === surface);
    if (of.length === 0) return [];
    const litresPer100Km =
      of.length < LEAST_COUNT ? null : ratesOf(of.map((interval) => interval.litresPer100Km));
    return [{ surface, intervals: of.length, km: sumOf(of, (interval) => interval.km), litresPer100Km }];
  });
}

function yamlOf(
  count: number,
  km: number,
  rates: FuelLog['litresPer100Km'],
  { surface, massKg }: FuelLog['observed'],
): string {
  const told = [
    ...(surface === null ? [] : [`surface: ${surface}`]),
    ...(massKg === null ? [] : [`massKg: ${Math.round(massKg)}`]),
  ];
  return [
    'fuel:',
    `  litresPer100Km: ${ratesYaml(rates)} # ${count} intervals from full to full, ${Math.round(km)} km`,
    ...(told.length === 0 ? [] : [`  observed: { ${told.join(', ')} }`]),
    '',
  ].join('\n');
}
