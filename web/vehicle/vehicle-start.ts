import type { RigFile } from '../../server/contract/rig.ts';
import type { Position, Vehicle } from '../../server/contract/vehicle.ts';
import { t } from '../language/t.ts';

/**
 * What "add the vehicle" puts in: figures of an ordinary long-wheelbase four-wheel-drive wagon, from memory, said to be
 * typical wherever they stand. What it may weigh is left out: a limit that nobody told would look like one.
 */
export const TYPICAL_VEHICLE = {
  kerbKg: 2400,
  includes: 'running-order',
  axleKg: { front: 1160, rear: 1240 },
  wheelbaseM: 2.85,
  trackM: 1.55,
  cgHeightM: 0.75,
  bodyRearOverhangM: 0.9,
  cabin: { fromM: 0.5, toM: 3.6, floorHeightM: 0.6, roofHeightM: 1.9 },
} as const satisfies Vehicle;

/** Mass of a person as EU type approval takes it, 75 kg (from memory). */
export const PERSON_KG = 75;

/** Where things usually are, for a first drawing (ours). */
export const PLACES = {
  driver: { behindFrontAxleM: 1.35, heightM: 1 },
  pet: { behindFrontAxleM: 2.7, heightM: 0.9 },
  gear: { behindFrontAxleM: 3.1, heightM: 0.9 },
  fuelTank: { behindFrontAxleM: 2.1, heightM: 0.55 },
  waterTank: { behindFrontAxleM: 2.5, heightM: 0.55 },
  fuelCans: { behindFrontAxleM: 3.9, heightM: 1 },
  waterCans: { behindFrontAxleM: 3, heightM: 0.85 },
} as const satisfies Record<string, Position>;

/** The rig with a typical vehicle; tanks and cans without a place get the usual one, so that there is something to see. */
export function withVehicle(rig: RigFile): RigFile {
  return {
    ...rig,
    fuel: {
      ...rig.fuel,
      tanks: rig.fuel.tanks.map((tank) => ({ position: { ...PLACES.fuelTank }, ...tank })),
      ...(rig.fuel.cans === undefined
        ? {}
        : { cans: { position: { ...PLACES.fuelCans }, ...rig.fuel.cans } }),
    },
    water: {
      ...rig.water,
      tanks: rig.water.tanks.map((tank) => ({ position: { ...PLACES.waterTank }, ...tank })),
      ...(rig.water.cans === undefined
        ? {}
        : { cans: { position: { ...PLACES.waterCans }, ...rig.water.cans } }),
    },
    vehicle: {
      ...structuredClone(TYPICAL_VEHICLE),
      people: [{ name: 'driver', kg: PERSON_KG, position: { ...PLACES.driver } }],
    },
  };
}

const TYPICAL_WORDS: Record<keyof typeof TYPICAL_VEHICLE, string> = {
  kerbKg: t('kerb mass'),
  includes: '',
  axleKg: t('axle loads'),
  wheelbaseM: t('wheelbase'),
  trackM: t('track'),
  cgHeightM: t('height of the centre of gravity'),
  bodyRearOverhangM: t('rear overhang'),
  cabin: t('cabin'),
};

/** What of a vehicle still stands as "add" put it in, in words; a vehicle that happens to be like that is named, too. */
export function typicalStill({ vehicle, fuel, water }: RigFile): string[] {
  if (vehicle === undefined) return [];
  const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);
  const keys = Object.keys(TYPICAL_VEHICLE) as (keyof typeof TYPICAL_VEHICLE)[];
  const measures = keys
    .filter((key) => TYPICAL_WORDS[key] !== '' && same(vehicle[key], TYPICAL_VEHICLE[key]))
    .map((key) => TYPICAL_WORDS[key]);
  const places: Position[] = Object.values(PLACES);
  const containers = [...fuel.tanks, ...water.tanks, fuel.cans, water.cans];
  const riders = [...(vehicle.people ?? []), ...(vehicle.pets ?? []), ...(vehicle.gear ?? [])];
  const placed = [...containers, ...riders].filter(
    (one) => one?.position !== undefined && places.some((place) => same(place, one.position)),
  );
  return placed.length === 0 ? measures : [...measures, t`${placed.length} places`];
}
