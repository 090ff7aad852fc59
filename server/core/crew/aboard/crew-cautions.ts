import type { Crew } from '../../../contract/crew.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { SLACK } from '../../quantity/slack.ts';
import type { Rig } from '../../rig/rig.ts';
import { crewUse } from '../needs/crew-use.ts';
import type { HeatEffect } from '../needs/heat.ts';
import { MOST_PER_DAY_L, MOST_PER_HOUR_L } from '../needs/heat-table.ts';
import { LEVELS } from '../needs/levels.ts';
import { daysWithoutWater } from '../needs/survival.ts';
import { WBGT_RANGE_C } from '../needs/wbgt.ts';
import { type HelpHours, hoursToHelp } from './help-hours.ts';
import type { ReserveWater } from './water-use.ts';

/** Shade temperature from which the days without water are told, °C (ours). */
const DANGER_C = 35;

/** What the people of a rig should know of their water; nothing for a rig that tells litres a day alone. */
export const crewCautions = (rig: Rig, trip: HelpHours, reserve: ReserveWater): Caution[] => [
  ...useCautions(rig),
  ...expectedHeat(rig),
  ...reserveCautions(rig, trip, reserve),
];

function useCautions({ crew, water }: Rig): Caution[] {
  if (crew === null) return [];
  const cautions: Caution[] = [];
  const { use, file } = crew;
  const leastL = LEVELS.basic.drinking.low;
  const meagre = file.people.findIndex(({ drinking }) => {
    const typical = typeof drinking === 'number' ? drinking : drinking?.typical;
    return typical !== undefined && typical < leastL;
  });
  if (meagre >= 0) {
    cautions.push({ code: 'drinking-below-survival', facts: { path: `/crew/people/${meagre}`, leastL } });
  }
  const [observedL, needL] = [use.total.high, use.expectedDrinking.high];
  if (use.from === 'observed' && observedL + SLACK < needL) {
    cautions.push({ code: 'observed-below-need', facts: { observedL, needL } });
  }
  if (water.grades !== null && water.grades.keptForDrinkingL + water.grades.anyL === 0) {
    cautions.push({ code: 'no-drinking-tank', facts: {} });
  }
  if (file.washingAtSource === true) cautions.push({ code: 'washing-at-source', facts: {} });
  return cautions;
}

function expectedHeat({ crew }: Rig): Caution[] {
  if (crew === null) return [];
  if (crew.file.heat === undefined)
    return crew.use.from === 'observed' ? [] : [{ code: 'heat-unknown', facts: {} }];
  return heatCautions(crew.file, crew.file.heat);
}

/** What the people of a crew should know of a heat. */
export function heatCautions(crew: Crew, expected: ExpectedHeat): Caution[] {
  const { heat, drinkingOfOne } = crewUse({ ...crew, heat: expected }, null);
  if (heat === null) return [];
  return [
    ...estimateCautions(heat, expected),
    ...intakeCautions(heat, drinkingOfOne.high),
    ...workCautions(heat),
    ...survivalCautions(expected),
  ];
}

type ExpectedHeat = NonNullable<Crew['heat']>;

function estimateCautions({ from }: HeatEffect, { temperatureC }: ExpectedHeat): Caution[] {
  const { from: fromC, to: toC } = WBGT_RANGE_C;
  if (from !== 'estimate' || temperatureC === undefined) return [];
  if (temperatureC >= fromC && temperatureC <= toC) return [];
  return [{ code: 'wbgt-outside-range', facts: { temperatureC, fromC, toC } }];
}

/** What the heat asks for that no body takes in. */
function intakeCautions({ workHoursPerDay, litresPerWorkHour }: HeatEffect, litresPerDay: number): Caution[] {
  const cautions: Caution[] = [];
  const perHourL = litresPerWorkHour.high;
  if (workHoursPerDay > 0 && perHourL >= MOST_PER_HOUR_L - SLACK) {
    cautions.push({ code: 'intake-hour-limit', facts: { litres: perHourL, mostL: MOST_PER_HOUR_L } });
  }
  if (litresPerDay > MOST_PER_DAY_L) {
    cautions.push({ code: 'intake-day-limit', facts: { litres: litresPerDay, mostL: MOST_PER_DAY_L } });
  }
  return cautions;
}

const workCautions = ({ workRest, workHoursPerDay, work }: HeatEffect): Caution[] =>
  workRest === null || workHoursPerDay <= 0 ? [] : [{ code: 'work-rest', facts: { work, ...workRest } }];

function survivalCautions({ temperatureC }: ExpectedHeat): Caution[] {
  if (temperatureC === undefined || temperatureC < DANGER_C) return [];
  const { resting, walking } = daysWithoutWater(temperatureC);
  const facts = { temperatureC, restingDays: resting, walkingDays: walking };
  return [{ code: 'survival-days', facts }];
}

function reserveCautions(rig: Rig, trip: HelpHours, reserve: ReserveWater): Caution[] {
  const cautions: Caution[] = [];
  if (rig.crew === null && hoursToHelp(trip) === null) return cautions;
  const [alarm, help] = [trip.alarmHours !== null, trip.helpHours !== null];
  if (!alarm || !help) cautions.push({ code: 'help-hours-unknown', facts: { alarm, help } });
  if (!reserve.holds) {
    const facts = { loss: reserve.worstLoss, safeL: reserve.safeL, reserveL: reserve.litres };
    cautions.push({ code: 'reserve-in-one-place', facts });
  }
  return cautions;
}
