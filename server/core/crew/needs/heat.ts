import type { Heat, Sun, Work } from '../../../contract/crew.ts';
import { SUN, WORK, WORK_HOURS } from '../../defaults/rig-defaults.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import { categoryOf, litresPerWorkHour, restFactor, workRestOf } from './heat-table.ts';
import { estimatedWbgtC, WBGT_RANGE_C } from './wbgt.ts';

/** What the heat expected does to drinking. */
export interface HeatEffect {
  readonly wbgtC: number;
  readonly from: 'told' | 'estimate';
  /** Of the table: 0 below it, 1 to 5. */
  readonly category: number;
  readonly sun: Sun;
  readonly work: Work;
  readonly workHoursPerDay: number;
  /** For each person: multiple of the drinking water of mild weather, and litres added by each hour of work. */
  readonly restFactor: number;
  readonly litresPerWorkHour: UseRange;
  /** Minutes of work and of rest in an hour; null where the table sets no limit. */
  readonly workRest: { readonly workMinutes: number; readonly restMinutes: number } | null;
  readonly why: Phrase;
}

/** What the heat told does to drinking; null where none is told. The file is taken as checked. */
export function heatOf(heat: Heat | undefined): HeatEffect | null {
  if (heat === undefined) return null;
  const measured = heat.wbgtC !== undefined;
  const wbgtC = heat.wbgtC ?? estimatedWbgtC(heat.temperatureC ?? 0, heat.humidityPercent ?? 0);
  const sun = heat.sun ?? SUN;
  const work = heat.work ?? WORK;
  return {
    wbgtC,
    from: measured ? 'told' : 'estimate',
    category: categoryOf(wbgtC),
    sun,
    work,
    workHoursPerDay: heat.workHoursPerDay ?? WORK_HOURS,
    restFactor: restFactor(wbgtC),
    litresPerWorkHour: litresPerWorkHour(wbgtC, work, sun),
    workRest: workRestOf(wbgtC, work),
    why: { phrase: 'heat-source', facts: { measured, fromC: WBGT_RANGE_C.from, toC: WBGT_RANGE_C.to } },
  };
}
