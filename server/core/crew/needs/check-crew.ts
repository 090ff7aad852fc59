import type { Crew } from '../../../contract/crew.ts';
import type { RigFile } from '../../../contract/rig.ts';
import type { Misfit } from '../../quantity/misfit.ts';
import { PERSON_USES } from './levels.ts';

/** First contradiction in what a rig tells of its water use and crew; null when there is none. */
export function checkCrew(rig: RigFile): Misfit | null {
  const { crew, water } = rig;
  if (crew === undefined) return rateTold(rig) ?? gradesNeedCrew(water);
  return oneObserved(rig, crew) ?? rangesInOrder(crew) ?? peopleDrink(crew) ?? heatTold(crew);
}

function rateTold({ water }: RigFile): Misfit | null {
  if (water.litresPerDay !== undefined) return null;
  return {
    path: '/water/litresPerDay',
    came: 'nothing',
    expected:
      'a number above 0 and at most 1000, in litres a day or a group of keys (low, typical, high), or a crew',
    remedy: 'Add "litresPerDay", or tell in /crew who drinks from the tanks',
  };
}

function gradesNeedCrew(water: RigFile['water']): Misfit | null {
  const tank = water.tanks.findIndex((one) => (one.grade ?? 'any') !== 'any');
  const path =
    tank >= 0
      ? `/water/tanks/${tank}/grade`
      : (water.cans?.grade ?? 'any') !== 'any'
        ? '/water/cans/grade'
        : null;
  if (path === null) return null;
  return {
    path,
    came: 'a container kept for one grade',
    expected: 'a crew beside it, to tell how much of each grade is used',
    remedy: 'Add /crew with its people, or leave the grade out',
  };
}

function oneObserved({ water }: RigFile, crew: Crew): Misfit | null {
  if (water.litresPerDay === undefined || crew.observedLitresPerDay === undefined) return null;
  return {
    path: '/crew/observedLitresPerDay',
    came: 'an observed figure beside /water/litresPerDay',
    expected: 'one of the two: both are litres a day of all aboard as observed',
    remedy: 'Keep /crew/observedLitresPerDay and leave /water/litresPerDay out',
  };
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
    if (use === undefined || typeof use === 'number') continue;
    if (use.low <= use.typical && use.typical <= use.high) continue;
    return {
      path,
      came: `low ${use.low}, typical ${use.typical}, high ${use.high}`,
      expected: 'low <= typical <= high',
      remedy: `Put the three numbers of ${path} in order`,
    };
  }
  return null;
}

/** Nobody lives on nothing: a drinking need of 0 is a slip, not a plan. */
function peopleDrink(crew: Crew): Misfit | null {
  for (const [index, { drinking }] of crew.people.entries()) {
    if (drinking === undefined) continue;
    const low = typeof drinking === 'number' ? drinking : drinking.low;
    if (low > 0) continue;
    return {
      path: `/crew/people/${index}/drinking`,
      came: '0 l a day',
      expected: 'what the person drinks, above 0',
      remedy: `Give litres a day in /crew/people/${index}/drinking, or leave it out for that of the level`,
    };
  }
  return null;
}

function heatTold({ heat }: Crew): Misfit | null {
  if (heat === undefined) return null;
  const { wbgtC, temperatureC, humidityPercent } = heat;
  const path = '/crew/heat';
  if (wbgtC !== undefined && humidityPercent !== undefined) {
    return {
      path,
      came: 'wbgtC and humidityPercent',
      expected: 'WBGT, or temperatureC with humidityPercent',
      remedy: 'Keep wbgtC if it was measured or forecast, else leave it out',
    };
  }
  if (wbgtC !== undefined) return null;
  if (temperatureC !== undefined && humidityPercent !== undefined) return null;
  return {
    path,
    came:
      temperatureC !== undefined
        ? 'temperatureC without humidityPercent'
        : humidityPercent !== undefined
          ? 'humidityPercent without temperatureC'
          : 'neither wbgtC nor temperatureC',
    expected: 'wbgtC, or temperatureC with humidityPercent',
    remedy: 'Add what is missing; in a dry desert by day the humidity is often 10 to 25 %',
  };
}
