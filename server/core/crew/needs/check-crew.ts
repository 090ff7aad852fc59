import type { Crew, Heat } from '../../../contract/crew.ts';
import type { RigFile } from '../../../contract/rig.ts';
import type { Misfit } from '../../phrases/misfits.ts';
import { rangeInOrder } from '../../quantity/range-in-order.ts';
import { PERSON_USES } from './levels.ts';

/** First contradiction in what a rig tells of its water use and crew; null when there is none. */
export function checkCrew(rig: RigFile): Misfit | null {
  const { crew, water } = rig;
  if (crew === undefined) return rateTold(rig) ?? gradesNeedCrew(water);
  return (
    oneObserved(rig, crew) ?? rangesInOrder(crew) ?? peopleDrink(crew) ?? heatMisfit(crew.heat, '/crew/heat')
  );
}

function rateTold({ water }: RigFile): Misfit | null {
  if (water.litresPerDay !== undefined) return null;
  return { path: '/water/litresPerDay', misfit: 'use-untold', facts: {} };
}

function gradesNeedCrew(water: RigFile['water']): Misfit | null {
  const tank = water.tanks.findIndex((one) => (one.grade ?? 'any') !== 'any');
  const path =
    tank >= 0
      ? `/water/tanks/${tank}/grade`
      : (water.cans?.grade ?? 'any') !== 'any'
        ? '/water/cans/grade'
        : null;
  return path === null ? null : { path, misfit: 'grade-without-crew', facts: {} };
}

function oneObserved({ water }: RigFile, crew: Crew): Misfit | null {
  if (water.litresPerDay === undefined || crew.observedLitresPerDay === undefined) return null;
  return { path: '/crew/observedLitresPerDay', misfit: 'observed-twice', facts: {} };
}

function rangesInOrder(crew: Crew): Misfit | null {
  const uses = [
    { path: '/crew/observedLitresPerDay', use: crew.observedLitresPerDay },
    ...crew.people.flatMap((person, index) =>
      PERSON_USES.map((use) => ({ path: `/crew/people/${index}/${use}`, use: person[use] })),
    ),
    ...(crew.pets ?? []).map((pet, index) => ({
      path: `/crew/pets/${index}/litresPerDay`,
      use: pet.litresPerDay,
    })),
  ];
  for (const { path, use } of uses) {
    const misfit = rangeInOrder(use ?? 0, path);
    if (misfit !== null) return misfit;
  }
  return null;
}

/** Nobody lives on nothing: a drinking need of 0 is a slip, not a plan. */
function peopleDrink(crew: Crew): Misfit | null {
  for (const [index, { drinking }] of crew.people.entries()) {
    if (drinking === undefined) continue;
    const low = typeof drinking === 'number' ? drinking : drinking.low;
    if (low > 0) continue;
    return { path: `/crew/people/${index}/drinking`, misfit: 'drinking-nothing', facts: {} };
  }
  return null;
}

/** Whether heat is told in one way, and whole; `path` is where it stands. */
export function heatMisfit(heat: Heat | undefined, path: string): Misfit | null {
  if (heat === undefined) return null;
  const { wbgtC, temperatureC, humidityPercent, windKmPerHour } = heat;
  const humidity = humidityPercent !== undefined;
  if (wbgtC !== undefined) {
    const key = humidity ? 'humidityPercent' : windKmPerHour === undefined ? null : 'windKmPerHour';
    return key === null ? null : { path, misfit: 'heat-twice', facts: { key } };
  }
  const temperature = temperatureC !== undefined;
  if (temperature && humidity) return null;
  return { path, misfit: 'heat-incomplete', facts: { temperature, humidity } };
}
