import type { RigFile } from '../../contract/rig.ts';
import type { Vehicle } from '../../contract/vehicle.ts';
import { CG_SIDE_M, DRIVER_KG, DRIVER_NAME, KERB_INCLUDES } from '../defaults/rig-defaults.ts';
import type { Phrase } from '../phrases/phrases.ts';
import { type Assume, OURS } from '../quantity/assumption.ts';
import { type Container, containersOf, defaultCanKg } from './containers.ts';
import { kerbCgHeightM, kerbContentsOf } from './kerb.ts';
import { type Frame, type PointMass, placeOfPosition } from './statics.ts';

/** The masses of a rig, every default filled in. */
export interface MassModel {
  vehicle: Vehicle;
  frame: Frame;
  /** All that weighs the same whatever is in the containers; what the kerb mass includes of that is taken off. */
  fixed: PointMass[];
  containers: Container[];
  /** Paths in the rig of what is missing for axle loads, sides or the centre of gravity. */
  missing: string[];
}

/** The rig file with the defaults of its masses written into it; as it was where it tells no vehicle. */
export function settleVehicle(file: RigFile, assume: Assume): RigFile {
  const { vehicle } = file;
  if (vehicle === undefined) return file;
  const includes = vehicle.includes ?? KERB_INCLUDES;
  if (vehicle.includes === undefined) {
    const value: Phrase = { phrase: 'kerb-includes', facts: { includes: KERB_INCLUDES } };
    assume('/vehicle/includes', value, { phrase: 'heavier-reading', facts: {} });
  }
  const people = settlePeople(vehicle, kerbContentsOf(includes).driverKg, assume);
  if (vehicle.trackM !== undefined && vehicle.cgSideM === undefined) {
    assume('/vehicle/cgSideM', { phrase: 'sides-even', facts: {} }, OURS);
  }
  return {
    ...file,
    vehicle: { cgSideM: CG_SIDE_M, ...vehicle, includes, people },
    fuel: { ...file.fuel, ...withCanMass(file.fuel.cans, 'fuel', assume) },
    water: { ...file.water, ...withCanMass(file.water.cans, 'water', assume) },
  };
}

/** Those told, else a driver. */
function settlePeople(
  { people = [] }: Vehicle,
  kerbDriverKg: number,
  assume: Assume,
): NonNullable<Vehicle['people']> {
  if (people.length > 0) return people;
  const isInKerb = kerbDriverKg !== 0;
  const kg = isInKerb ? kerbDriverKg : DRIVER_KG;
  const why: Phrase = { phrase: isInKerb ? 'as-kerb-includes' : 'type-approval', facts: {} };
  assume('/vehicle/people', { phrase: 'driver-of', facts: { kg } }, why);
  return [{ name: DRIVER_NAME, kg }];
}

function withCanMass(cans: RigFile['fuel']['cans'], commodity: 'fuel' | 'water', assume: Assume) {
  if (cans === undefined || cans.owned === 0 || cans.emptyKg !== undefined) return {};
  const emptyKg = defaultCanKg(commodity, cans.litres);
  const value: Phrase = { phrase: 'kilograms', facts: { kg: emptyKg } };
  assume(`/${commodity}/cans/emptyKg`, value, { phrase: 'can-mass', facts: {} });
  return { cans: { ...cans, emptyKg } };
}

/** The masses of a rig; null where it tells no vehicle. */
export function massModelOf(given: RigFile): MassModel | null {
  const file = settleVehicle(given, () => {});
  const { vehicle } = file;
  if (vehicle === undefined) return null;
  const kerb = kerbContentsOf(vehicle.includes ?? KERB_INCLUDES);
  const containers = containersOf(file, { fuel: kerb.fuelPercent, water: kerb.waterPercent });
  const fixed = fixedMasses(vehicle, containers, kerb.driverKg);
  const { known, missing } = completeness(vehicle, fixed, containers);
  return {
    vehicle,
    frame: { wheelbaseM: vehicle.wheelbaseM ?? null, trackM: vehicle.trackM ?? null, known },
    fixed,
    containers,
    missing,
  };
}

const fixedMasses = (vehicle: Vehicle, containers: readonly Container[], kerbDriverKg: number): PointMass[] =>
  [
    ...kerbMasses(vehicle, kerbDriverKg),
    ...containers.flatMap(containerMasses),
    ...ridingMasses(vehicle),
  ].filter((mass) => mass.kg !== 0);

/** The kerb mass, less the driver that it includes. */
function kerbMasses(vehicle: Vehicle, driverKg: number): PointMass[] {
  const { kerbKg, axleKg, wheelbaseM, people = [] } = vehicle;
  const xM =
    axleKg === undefined || wheelbaseM === undefined
      ? null
      : (axleKg.rear * wheelbaseM) / (axleKg.front + axleKg.rear);
  return [
    {
      path: '/vehicle',
      label: { phrase: 'kerb-mass', facts: {} },
      kg: kerbKg,
      xM,
      heightM: kerbCgHeightM(vehicle),
      sideM: vehicle.cgSideM ?? CG_SIDE_M,
    },
    {
      path: '/vehicle/people/0',
      label: { phrase: 'kerb-driver', facts: {} },
      kg: -driverKg,
      ...placeOfPosition(people[0]?.position),
    },
  ];
}

/** A container empty, less what of its filling the kerb mass includes. */
function containerMasses({ path, name, emptyKg, kerbL, kgPerLitre, position }: Container): PointMass[] {
  const place = placeOfPosition(position);
  return [
    { path, label: { phrase: 'kerb-filling', facts: { of: name } }, kg: -kerbL * kgPerLitre, ...place },
    { path, label: { phrase: 'empty-container', facts: { of: name } }, kg: emptyKg, ...place },
  ];
}

/** People, pets and gear. */
function ridingMasses({ people = [], pets = [], gear = [] }: Vehicle): PointMass[] {
  const riders = [
    ...people.map((one, index) => ({ ...one, path: `/vehicle/people/${index}`, kind: 'person' as const })),
    ...pets.map((one, index) => ({ ...one, path: `/vehicle/pets/${index}`, kind: 'pet' as const })),
    ...gear.map((one, index) => ({ ...one, path: `/vehicle/gear/${index}`, kind: 'gear' as const })),
  ];
  return riders.map(({ path, kind, name, kg, position }) => ({
    path,
    label:
      name === undefined ? { phrase: 'rider', facts: { kind } } : { phrase: 'own-name', facts: { name } },
    kg,
    ...placeOfPosition(position),
  }));
}

/** Which figures can be told, and what is missing for the others. */
function completeness(vehicle: Vehicle, fixed: readonly PointMass[], containers: readonly Container[]) {
  const missing = new Set<string>();
  const known = { x: true, height: true, side: true };
  const need = (told: boolean, path: string, figures: (keyof typeof known)[]) => {
    if (told) return;
    missing.add(path);
    for (const figure of figures) known[figure] = false;
  };
  need(vehicle.wheelbaseM !== undefined, '/vehicle/wheelbaseM', ['x']);
  need(vehicle.axleKg !== undefined, '/vehicle/axleKg', ['x']);
  need(kerbCgHeightM(vehicle) !== null, '/vehicle/cgHeightM', ['height']);
  // Without a track, heights are still heights.
  need(vehicle.trackM !== undefined, '/vehicle/trackM', ['side']);

  // What the kerb mass includes and what rides in its place may cancel out.
  const kgByPath = new Map<string, number>();
  for (const { path, kg, xM } of fixed) {
    if (xM === null && path !== '/vehicle') kgByPath.set(path, (kgByPath.get(path) ?? 0) + kg);
  }
  for (const { path, litres, position } of containers) {
    if (position === null && litres > 0) kgByPath.set(path, Number.POSITIVE_INFINITY);
  }
  for (const [path, kg] of kgByPath) need(kg === 0, `${path}/position`, ['x', 'height', 'side']);
  return { known, missing: [...missing] };
}
