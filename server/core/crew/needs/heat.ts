import type { Heat, Sun, Work } from '../../../contract/crew.ts';
import { SUN, WIND_KM_PER_HOUR, WORK, WORK_HOURS } from '../../defaults/rig-defaults.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import { categoryOf, litresPerWorkHour, restFactor, workRestOf } from './heat-table.ts';
import { WBGT_RANGE_C, type Weather, wbgtOf } from './wbgt.ts';

/** What the heat expected does to drinking. */
export interface HeatEffect {
  readonly wbgtC: number;
  readonly from: 'told' | 'estimate';
  /** Of the table: 0 below it, 1 to 5. */
  readonly category: number;
  readonly sun: Sun;
  /** Null where WBGT was told. */
  readonly windKmPerHour: number | null;
  readonly work: Work;
  readonly workHoursPerDay: number;
  /** For each person: multiple of the drinking water of mild weather, and litres added by each hour of work. */
  readonly restFactor: number;
  readonly litresPerWorkHour: UseRange;
  /** Minutes of work and of rest in an hour; null where the table sets no limit. */
  readonly workRest: { readonly workMinutes: number; readonly restMinutes: number } | null;
  readonly why: Phrase;
}

/** On a level square metre, W/m² (ours: a clear sky with a high sun, a veiled one, light from all sides). */
const SUN_W_PER_M2: Record<Sun, number> = { full: 1000, some: 600, shade: 100 };
/** The sun stands so high where it is hottest, cosine of its angle from overhead: 26 degrees (ours). */
const COS_ZENITH = 0.9;
/** Outside the atmosphere, W/m², and the most of it that is reckoned with, as a share (Liljegren et al. 2008). */
const SOLAR_CONSTANT = 1367;
const MOST_OF_SOLAR = 0.85;
const MOST_DIRECT = 0.9;
/** Sea level: higher up the wet bulb is a little cooler. */
const PRESSURE_HPA = 1013.25;
const KM_PER_HOUR_OF_M_PER_S = 3.6;

/** What of the sun's heat comes straight from it; none in shade (Liljegren et al. 2008, by the clearness of the sky). */
function directShareOf(sun: Sun): number {
  if (sun === 'shade') return 0;
  const clearness = Math.min(MOST_OF_SOLAR, SUN_W_PER_M2[sun] / (SOLAR_CONSTANT * COS_ZENITH));
  return Math.min(MOST_DIRECT, Math.exp(3 - 1.34 * clearness - 1.65 / clearness));
}

/** The weather that heat is told for; the file is taken as checked. */
export function weatherOf({
  temperatureC = 0,
  humidityPercent = 0,
  sun = SUN,
  windKmPerHour,
}: Heat): Weather {
  return {
    temperatureC,
    humidityPercent,
    windMPerS: (windKmPerHour ?? WIND_KM_PER_HOUR) / KM_PER_HOUR_OF_M_PER_S,
    pressureHPa: PRESSURE_HPA,
    solarWPerM2: SUN_W_PER_M2[sun],
    directShare: directShareOf(sun),
    cosZenith: COS_ZENITH,
  };
}

/** What the heat told does to drinking; null where none is told. The file is taken as checked. */
export function heatOf(heat: Heat | undefined): HeatEffect | null {
  if (heat === undefined) return null;
  const measured = heat.wbgtC !== undefined;
  const wbgtC = heat.wbgtC ?? wbgtOf(weatherOf(heat)).wbgtC;
  const sun = heat.sun ?? SUN;
  const work = heat.work ?? WORK;
  return {
    wbgtC,
    from: measured ? 'told' : 'estimate',
    category: categoryOf(wbgtC),
    sun,
    windKmPerHour: measured ? null : (heat.windKmPerHour ?? WIND_KM_PER_HOUR),
    work,
    workHoursPerDay: heat.workHoursPerDay ?? WORK_HOURS,
    restFactor: restFactor(wbgtC),
    litresPerWorkHour: litresPerWorkHour(wbgtC, work, sun),
    workRest: workRestOf(wbgtC, work),
    why: { phrase: 'heat-source', facts: { measured, fromC: WBGT_RANGE_C.from, toC: WBGT_RANGE_C.to } },
  };
}
