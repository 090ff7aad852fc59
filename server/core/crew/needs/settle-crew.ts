import type { Crew } from '../../../contract/crew.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import { type CrewUse, crewUse } from './crew-use.ts';
import { DEFAULT_SUN, DEFAULT_WORK, DEFAULT_WORK_HOURS } from './heat.ts';
import { DEFAULT_LEVEL, LEVELS, PERSON_USES } from './levels.ts';
import { HIGH_OF_ONE_NUMBER, rangeOf } from './range.ts';

type Assume = (path: string, value: string, why: string) => void;

/**
 * Fills in what a rig file leaves out of its crew and reckons what they use. `told`: the rig's own litres a day, which
 * are an observed figure beside a crew. The file is taken as checked (check-crew).
 */
export function settleCrew(
  file: Crew,
  told: UseRange | null,
  assume: Assume,
): { use: CrewUse; settled: Crew } {
  const own = file.observedLitresPerDay;
  if (told !== null) {
    assume(
      '/crew/observedLitresPerDay',
      `${told.high} l a day at most`,
      'taken from /water/litresPerDay: your own figure wins over the sum of the parts',
    );
  }
  if (typeof own === 'number') {
    assume(
      '/crew/observedLitresPerDay/high',
      `${own * HIGH_OF_ONE_NUMBER} l a day`,
      `typical × ${HIGH_OF_ONE_NUMBER} (ours)`,
    );
  }
  const observed = told ?? (own === undefined ? null : rangeOf(own));
  const people = file.people.map((person, index) => {
    const path = `/crew/people/${index}`;
    for (const use of PERSON_USES) {
      const value = person[use];
      if (typeof value !== 'number' || value === 0) continue;
      const high = `${value * HIGH_OF_ONE_NUMBER} l a day`;
      assume(`${path}/${use}/high`, high, `typical × ${HIGH_OF_ONE_NUMBER} (ours)`);
    }
    if (person.level !== undefined || PERSON_USES.every((use) => person[use] !== undefined)) return person;
    assume(`${path}/level`, DEFAULT_LEVEL, LEVELS[DEFAULT_LEVEL].source);
    return { ...person, level: DEFAULT_LEVEL };
  });

  const { heat } = file;
  if (heat !== undefined) {
    if (heat.sun === undefined) assume('/crew/heat/sun', DEFAULT_SUN, 'the thirstiest (ours)');
    if (heat.work === undefined) assume('/crew/heat/work', DEFAULT_WORK, 'ours');
    if (heat.workHoursPerDay === undefined) {
      assume('/crew/heat/workHoursPerDay', `${DEFAULT_WORK_HOURS} hours`, 'ours');
    }
  }
  if (observed === null) {
    if (file.vehicleLitresPerDay === undefined)
      assume('/crew/vehicleLitresPerDay', 'none', 'not told (ours)');
    if (file.lossPercent === undefined) {
      assume('/crew/lossPercent', '0 %', 'taken to lie between typical and high use (ours)');
    }
  }
  if (file.washingAtSource === undefined) {
    assume('/crew/washingAtSource', 'no', 'all washing water is carried: the safe side (ours)');
  }
  const settled: Crew = {
    ...file,
    people,
    ...(heat === undefined
      ? {}
      : {
          heat: {
            ...heat,
            sun: heat.sun ?? DEFAULT_SUN,
            work: heat.work ?? DEFAULT_WORK,
            workHoursPerDay: heat.workHoursPerDay ?? DEFAULT_WORK_HOURS,
          },
        }),
    vehicleLitresPerDay: file.vehicleLitresPerDay ?? 0,
    lossPercent: file.lossPercent ?? 0,
    washingAtSource: file.washingAtSource ?? false,
  };
  return { use: crewUse(settled, observed), settled };
}
