import type { Crew, Heat, Person } from '../../../contract/crew.ts';
import {
  LOSS_PERCENT,
  SUN,
  USE_LEVEL,
  VEHICLE_LITRES_PER_DAY,
  WATER_HIGH,
  WIND_KM_PER_HOUR,
  WORK,
  WORK_HOURS,
} from '../../defaults/rig-defaults.ts';
import { type Assume, OURS } from '../../quantity/assumption.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import { type CrewUse, crewUse } from './crew-use.ts';
import { PERSON_USES } from './levels.ts';
import { rangeOf } from './range.ts';

/** A crew with every default filled in, as a file, and what it uses. */
export interface SettledCrew {
  readonly use: CrewUse;
  readonly settled: Crew;
}

/**
 * Fills in what a rig file leaves out of its crew and reckons what they use. `ofRig`: the rig's own litres a day, which
 * are an observed figure beside a crew. The file is taken as checked (check-crew).
 */
export function settleCrew(file: Crew, ofRig: UseRange | null, assume: Assume): SettledCrew {
  const observed = observedOf(file, ofRig, assume);
  const people = file.people.map((person, index) => settlePerson(person, `/crew/people/${index}`, assume));
  const heat = file.heat === undefined ? undefined : settleHeat(file.heat, assume);
  if (observed === null) assumePlainUse(file, assume);
  if (file.washingAtSource === undefined) {
    const why = { phrase: 'all-washing-carried', facts: {} } as const;
    assume('/crew/washingAtSource', { phrase: 'no', facts: {} }, why);
  }
  const settled: Crew = {
    ...file,
    people,
    ...(heat === undefined ? {} : { heat }),
    vehicleLitresPerDay: file.vehicleLitresPerDay ?? VEHICLE_LITRES_PER_DAY,
    lossPercent: file.lossPercent ?? LOSS_PERCENT,
    washingAtSource: file.washingAtSource ?? false,
  };
  return { use: crewUse(settled, observed), settled };
}

/** The user's own figure for all aboard; null where there is none. */
function observedOf(file: Crew, ofRig: UseRange | null, assume: Assume): UseRange | null {
  const own = file.observedLitresPerDay;
  if (ofRig !== null) {
    assume(
      '/crew/observedLitresPerDay',
      { phrase: 'litres-a-day-at-most', facts: { litres: ofRig.high } },
      { phrase: 'own-figure-wins', facts: {} },
    );
  }
  if (typeof own === 'number') assumeHigh('/crew/observedLitresPerDay', own, assume);
  return ofRig ?? (own === undefined ? null : rangeOf(own));
}

/** The high end of a use given as one number. */
function assumeHigh(path: string, typical: number, assume: Assume): void {
  assume(
    `${path}/high`,
    { phrase: 'litres-a-day', facts: { litres: typical * WATER_HIGH } },
    { phrase: 'typical-times', facts: { factor: WATER_HIGH } },
  );
}

function settlePerson(person: Person, path: string, assume: Assume): Person {
  for (const use of PERSON_USES) {
    const value = person[use];
    if (typeof value === 'number' && value !== 0) assumeHigh(`${path}/${use}`, value, assume);
  }
  if (person.level !== undefined || PERSON_USES.every((use) => person[use] !== undefined)) return person;
  assume(
    `${path}/level`,
    { phrase: 'word', facts: { word: USE_LEVEL } },
    { phrase: 'level-source', facts: { level: USE_LEVEL } },
  );
  return { ...person, level: USE_LEVEL };
}

function settleHeat(heat: Heat, assume: Assume): Heat {
  const word = (text: string) => ({ phrase: 'word', facts: { word: text } }) as const;
  if (heat.sun === undefined) {
    assume('/crew/heat/sun', word(SUN), { phrase: 'thirstiest', facts: {} });
  }
  if (heat.wbgtC === undefined && heat.windKmPerHour === undefined) {
    const value = { phrase: 'kilometres-an-hour', facts: { km: WIND_KM_PER_HOUR } } as const;
    assume('/crew/heat/windKmPerHour', value, OURS);
  }
  if (heat.work === undefined) assume('/crew/heat/work', word(WORK), OURS);
  if (heat.workHoursPerDay === undefined) {
    assume('/crew/heat/workHoursPerDay', { phrase: 'hours', facts: { hours: WORK_HOURS } }, OURS);
  }
  return {
    ...heat,
    sun: heat.sun ?? SUN,
    ...(heat.wbgtC === undefined ? { windKmPerHour: heat.windKmPerHour ?? WIND_KM_PER_HOUR } : {}),
    work: heat.work ?? WORK,
    workHoursPerDay: heat.workHoursPerDay ?? WORK_HOURS,
  };
}

/** What is taken for nothing where the parts of the crew are summed. */
function assumePlainUse(file: Crew, assume: Assume): void {
  if (file.vehicleLitresPerDay === undefined) {
    const why = { phrase: 'not-told', facts: {} } as const;
    assume('/crew/vehicleLitresPerDay', { phrase: 'none', facts: {} }, why);
  }
  if (file.lossPercent === undefined) {
    const why = { phrase: 'within-typical-and-high', facts: {} } as const;
    assume('/crew/lossPercent', { phrase: 'percent', facts: { percent: LOSS_PERCENT } }, why);
  }
}
