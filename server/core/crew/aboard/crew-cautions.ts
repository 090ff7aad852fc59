import type { WaterUse } from '../../../contract/crew.ts';
import type { Rig } from '../../rig/rig.ts';
import { MOST_PER_DAY_L, MOST_PER_HOUR_L } from '../needs/heat-table.ts';
import { LEVELS } from '../needs/levels.ts';
import { daysWithoutWater } from '../needs/survival.ts';
import { WBGT_RANGE_C } from '../needs/wbgt.ts';
import { type HelpHours, hoursToHelp } from './help-hours.ts';

type CrewCaution = WaterUse['cautions'][number];

/** Shade temperature from which the days without water are told, °C (ours). */
const DANGER_C = 35;
const SLACK_L = 1e-9;

const shown = (value: number): string => String(Math.round(value * 10) / 10);

/** What the people of a rig should know of their water; nothing for a rig that tells litres a day alone. */
export function crewCautions(rig: Rig, trip: HelpHours, reserve: WaterUse['reserve']): CrewCaution[] {
  return [...cautionsOnUse(rig), ...heatCautions(rig), ...reserveCautions(rig, trip, reserve)];
}

function cautionsOnUse({ crew, water }: Rig): CrewCaution[] {
  if (crew === null) return [];
  const cautions: CrewCaution[] = [];
  const { use, file } = crew;
  const leastL = LEVELS.basic.uses.drinking.low;
  const meagre = file.people.findIndex(({ drinking }) => {
    const typical = typeof drinking === 'number' ? drinking : drinking?.typical;
    return typical !== undefined && typical < leastL;
  });
  if (meagre >= 0) {
    const text = `/crew/people/${meagre} drinks less than ${leastL} l a day, the least to survive on in mild weather (Sphere Handbook). Never ration drinking water.`;
    cautions.push({ code: 'drinking-below-survival', text });
  }
  if (use.from === 'observed' && use.total.high + SLACK_L < use.expectedDrinking.high) {
    const text = `Your own figure of ${shown(use.total.high)} l a day is below the ${shown(use.expectedDrinking.high)} l of drinking grade that the crew may need as told. Was it observed in such heat, with such work?`;
    cautions.push({ code: 'observed-below-need', text });
  }
  if (water.grades !== null && water.grades.keptForDrinkingL + water.grades.anyL === 0) {
    cautions.push({
      code: 'no-drinking-tank',
      text: 'All fixed tanks are kept for washing: none holds drinking water.',
    });
  }
  if (file.washingAtSource === true) {
    const text =
      'Washing water is not carried: it is taken at water that you marked safe for skin. Untreated water can harm skin, eyes and wounds.';
    cautions.push({ code: 'washing-at-source', text });
  }
  return cautions;
}

function heatCautions({ crew }: Rig): CrewCaution[] {
  if (crew === null) return [];
  const { heat } = crew.use;
  const told = crew.file.heat;
  if (heat === null || told === undefined) {
    if (crew.use.from === 'observed') return [];
    const text =
      'The heat expected was not told: drinking is reckoned for mild weather. In very hot weather it can double.';
    return [{ code: 'heat-unknown', text }];
  }
  const cautions: CrewCaution[] = [];
  const { temperatureC } = told;
  if (heat.from === 'estimate' && temperatureC !== undefined && !insideRange(temperatureC)) {
    const text = `WBGT is estimated at ${shown(temperatureC)} °C, outside the ${WBGT_RANGE_C.from} to ${WBGT_RANGE_C.to} °C that the estimate is meant for.`;
    cautions.push({ code: 'wbgt-outside-range', text });
  }
  if (heat.workHoursPerDay > 0 && heat.litresPerWorkHour.high >= MOST_PER_HOUR_L - SLACK_L) {
    const text = `Work may take as much as ${shown(heat.litresPerWorkHour.high)} l an hour; a body takes in ${shown(MOST_PER_HOUR_L)} l at most. Rest in shade, work by night. The water is carried all the same.`;
    cautions.push({ code: 'intake-hour-limit', text });
  }
  const { high } = crew.use.drinkingOfOne;
  if (high > MOST_PER_DAY_L) {
    const text = `A person may need ${shown(high)} l to drink in a day; a body takes in ${shown(MOST_PER_DAY_L)} l at most. Work less in that heat. The water is carried all the same.`;
    cautions.push({ code: 'intake-day-limit', text });
  }
  if (heat.workRest !== null && heat.workHoursPerDay > 0) {
    const { workMinutes, restMinutes } = heat.workRest;
    const text = `In that heat ${heat.work} work needs ${restMinutes} minutes of rest after ${workMinutes} minutes (US Army TB MED 507, acclimated people).`;
    cautions.push({ code: 'work-rest', text });
  }
  if (temperatureC !== undefined && temperatureC >= DANGER_C) {
    const { resting, walking } = daysWithoutWater(temperatureC);
    const text = `At ${shown(temperatureC)} °C in shade people without water are expected to live about ${resting} days at rest, ${walking} when they walk by night (Adolph, 1947: resting men; from memory). Stay with the vehicle, in shade.`;
    cautions.push({ code: 'survival-days', text });
  }
  return cautions;
}

const insideRange = (temperatureC: number): boolean =>
  temperatureC >= WBGT_RANGE_C.from && temperatureC <= WBGT_RANGE_C.to;

function reserveCautions(rig: Rig, trip: HelpHours, reserve: WaterUse['reserve']): CrewCaution[] {
  const cautions: CrewCaution[] = [];
  if (rig.crew === null && hoursToHelp(trip) === null) return cautions;
  const missing = [
    ...(trip.alarmHours === null ? ['the alarm (alarmHours)'] : []),
    ...(trip.helpHours === null ? ['help (helpHours)'] : []),
  ];
  if (missing.length > 0) {
    const text = `Hours until ${missing.join(' and until ')} were not told: the water reserve may not last that long.`;
    cautions.push({ code: 'help-hours-unknown', text });
  }
  if (!reserve.holds) {
    const text = `One leak, pump or tap can empty ${reserve.worstLoss}: then ${shown(reserve.safeL)} l of drinking water are left even with all full, less than the reserve of ${shown(reserve.litres)} l. Keep the reserve apart, in cans or a tank of its own.`;
    cautions.push({ code: 'reserve-in-one-place', text });
  }
  return cautions;
}
