import type { Heat, Sun, WaterUse, Work } from '../../../contract/crew.ts';
import { categoryOf, litresPerWorkHour, restFactor, workRestOf } from './heat-table.ts';
import { estimatedWbgtC, WBGT_WHY } from './wbgt.ts';

/** Taken where heat is told without them (ours; the table is said to sustain at least four hours of work). */
export const DEFAULT_SUN: Sun = 'full';
export const DEFAULT_WORK: Work = 'moderate';
export const DEFAULT_WORK_HOURS = 4;

/** What the heat told does to drinking; null where none is told. The file is taken as checked. */
export function heatOf(heat: Heat | undefined): WaterUse['heat'] {
  if (heat === undefined) return null;
  const wbgtC = heat.wbgtC ?? estimatedWbgtC(heat.temperatureC ?? 0, heat.humidityPercent ?? 0);
  const sun = heat.sun ?? DEFAULT_SUN;
  const work = heat.work ?? DEFAULT_WORK;
  const table =
    'intake by WBGT and work: US Army TB MED 507, an average acclimated person, ± 1/4 US quart an hour';
  return {
    wbgtC,
    from: heat.wbgtC === undefined ? 'estimate' : 'told',
    category: categoryOf(wbgtC),
    sun,
    work,
    workHoursPerDay: heat.workHoursPerDay ?? DEFAULT_WORK_HOURS,
    restFactor: restFactor(wbgtC),
    litresPerWorkHour: litresPerWorkHour(wbgtC, work, sun),
    workRest: workRestOf(wbgtC, work),
    why: `${heat.wbgtC === undefined ? `WBGT ${WBGT_WHY}` : 'WBGT as told'}; ${table}; at rest up to double in the hottest category (US FEMA), a straight line between and beyond (ours)`,
  };
}
