import type { RigFile } from '../../server/contract/rig.ts';

type Crew = NonNullable<RigFile['crew']>;

/** What "add" puts in: typical values, said to be such, for the reader to change. */
export const TYPICAL_PERSON = { count: 2, level: 'careful' } as const;
export const TYPICAL_PET = { kind: 'dog', kg: 25 } as const;
export const TYPICAL_HEAT = { temperatureC: 36, humidityPercent: 25, workHoursPerDay: 2 } as const;

/** The water use of two people, litres a day, for a rig that never told one. */
const FALLBACK_LITRES = 12;

/**
 * The rig with a crew in place of one figure for all aboard. That figure is kept as the crew's own observed one, which
 * wins: nothing that the reader said is lost or quietly reckoned otherwise.
 */
export function withCrew(rig: RigFile): RigFile {
  const { litresPerDay, ...water } = rig.water;
  const crew: Crew = {
    people: [{ ...TYPICAL_PERSON }],
    ...(litresPerDay === undefined ? {} : { observedLitresPerDay: litresPerDay }),
  };
  return { ...rig, water, crew };
}

/** The rig without its crew: its observed figure, else what the crew was reckoned to use, stays as that of all aboard. */
export function withoutCrew(
  rig: RigFile,
  reckoned: { low: number; typical: number; high: number } | null,
): RigFile {
  const { crew, ...rest } = rig;
  const figure =
    crew?.observedLitresPerDay ?? rest.water.litresPerDay ?? roundedUp(reckoned) ?? FALLBACK_LITRES;
  // Containers can be kept for one grade only where a crew tells how much of each is used.
  const tanks = rest.water.tanks.map(({ grade: _, ...tank }) => tank);
  const { cans, ...water } = rest.water;
  const plainCans = cans === undefined ? {} : { cans: withoutGrade(cans) };
  return { ...rest, water: { ...water, litresPerDay: figure, tanks, ...plainCans } };
}

function withoutGrade({ grade: _, ...cans }: NonNullable<RigFile['water']['cans']>) {
  return cans;
}

/** To a tenth of a litre upwards: never less water than was reckoned. */
function roundedUp(use: { low: number; typical: number; high: number } | null) {
  if (use === null || !(use.low > 0)) return undefined;
  const tenth = (litres: number) => Math.ceil(Number((litres * 10).toFixed(6))) / 10;
  return { low: tenth(use.low), typical: tenth(use.typical), high: tenth(use.high) };
}
