import type { FuelLog } from '../../contract/answers/log.ts';
import { SURFACES, type Surface } from '../../contract/surface.ts';
import type { LogOmission } from '../phrases/log.ts';
import type { FuelColumns } from './columns.ts';
import type { CsvTable } from './csv.ts';
import { FaultyLog } from './faulty-log.ts';
import { readFills } from './fills.ts';
import { fuelCautions } from './fuel-cautions.ts';
import { type BareInterval, intervalsOf } from './intervals.ts';
import type { FuelLesson } from './lesson.ts';
import { fencesOf, isOutlier, LEAST_COUNT, percentileMethod, ratesOf } from './percentile.ts';

/** What a log of fill-ups tells of fuel use. Throws FaultyLog. */
export function learnFuel(table: CsvTable, columns: FuelColumns, onSurface: Surface | null): FuelLesson {
  const { fills, newestFirst } = readFills(table, columns);
  const { intervals, leftOut } = intervalsOf(fills, onSurface);
  if (intervals.length < LEAST_COUNT) {
    const anyFull = fills.some((fill) => fill.full);
    throw tooFew(intervals, leftOut, anyFull);
  }
  const rates = intervals.map((interval) => interval.litresPer100Km);
  const fences = fencesOf(rates);
  const km = sumOf(intervals, (interval) => interval.km);
  const litres = sumOf(intervals, (interval) => interval.litres);
  const lesson = {
    kind: 'fuel' as const,
    lines: fills.length,
    units: { distance: columns.distance, volume: columns.volume },
    intervals: intervals.map((one) => ({ ...one, outlier: isOutlier(one.litresPer100Km, fences) })),
    leftOut,
    litresPer100Km: ratesOf(rates),
    fences,
    total: { km, litres, litresPer100Km: (litres / km) * 100 },
    observed: observedOn(intervals, km),
    bySurface: bySurface(intervals),
    method: [{ phrase: 'log-intervals', facts: {} } as const, ...percentileMethod('interval')],
    unreadColumns: columns.unread,
  };
  return { ...lesson, cautions: fuelCautions(lesson, fills, newestFirst) };
}

const sumOf = (intervals: readonly BareInterval[], figure: (interval: BareInterval) => number): number =>
  intervals.reduce((sum, interval) => sum + figure(interval), 0);

function tooFew(
  intervals: readonly BareInterval[],
  leftOut: readonly LogOmission[],
  anyFull: boolean,
): FaultyLog {
  // The first full tank of all begins an interval and ends none.
  const more = LEAST_COUNT - intervals.length + (anyFull ? 0 : 1);
  const facts = { intervals, leftOut, least: LEAST_COUNT, more };
  return new FaultyLog({ place: null, fault: 'intervals-few', facts });
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
