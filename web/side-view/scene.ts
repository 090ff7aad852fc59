import type { RigFile } from '../../server/contract/rig.ts';
import type { MassReport, MassState, Position } from '../../server/contract/vehicle.ts';
import { heldShares } from './held-shares.ts';

/** Something that rides on the vehicle, as a box about its centre of gravity; metres. */
export interface Thing {
  /** Its path in the rig, as the masses name it. */
  path: string;
  /** Stands beside it in drawing and table; from 1. */
  number: number;
  name: string;
  what: 'fuel' | 'water' | 'person' | 'pet' | 'gear';
  /** Null where the rig does not tell where it is: then it is not drawn. */
  place: Position | null;
  widthM: number;
  tallM: number;
  /** Of a container: how full, 0 to 1. */
  full: number | null;
  /** What it weighs at this moment, filling included. */
  kg: number;
}

/** The vehicle from its left side at one moment: metres behind the front axle and above the ground. */
export interface Scene {
  wheelbaseM: number | null;
  wheelRadiusM: number;
  body: {
    frontM: number;
    rearM: number;
    roofM: number;
    floorM: number;
    screenM: number;
    toldInFull: boolean;
  };
  things: Thing[];
  centre: { xM: number; heightM: number | null } | null;
  /** What must be in the picture. */
  extent: { frontM: number; rearM: number; topM: number };
}

/** Body ahead of the front axle, behind the rear one, roof, floor and wheels where nothing is told, metres (ours). */
const FRONT_OVERHANG_M = 0.85;
const REAR_OVERHANG_M = 0.9;
const ROOF_M = 1.9;
const FLOOR_M = 0.6;
const SCREEN_M = 0.5;
const WHEEL_RADIUS_M = 0.38;
/** What is drawn is taken as half a metre across, and gear as 400 kg to the cubic metre (ours): only the picture needs it. */
const ACROSS_M = 0.5;
const GEAR_KG_PER_M3 = 400;
const PERSON = { widthM: 0.36, tallM: 0.86 };

/** What there is to draw of a rig with a vehicle, at one state of its masses. Pure. */
export function sceneOf(rig: RigFile, mass: MassReport, state: MassState): Scene {
  const { vehicle = { kerbKg: 0 } } = rig;
  const wheelbaseM = vehicle.wheelbaseM ?? null;
  const { cabin } = vehicle;
  const rearAxleM = wheelbaseM ?? 2.8;
  const body = {
    frontM: -FRONT_OVERHANG_M,
    rearM: rearAxleM + (vehicle.bodyRearOverhangM ?? REAR_OVERHANG_M),
    roofM: cabin?.roofHeightM ?? ROOF_M,
    floorM: cabin?.floorHeightM ?? FLOOR_M,
    screenM: cabin?.fromM ?? SCREEN_M,
    toldInFull: cabin !== undefined && vehicle.bodyRearOverhangM !== undefined && wheelbaseM !== null,
  };
  const things = thingsOf(rig, mass, state);
  const placed = things.flatMap(({ place, widthM, tallM }) =>
    place === null
      ? []
      : [
          {
            from: place.behindFrontAxleM - widthM / 2,
            to: place.behindFrontAxleM + widthM / 2,
            top: place.heightM + tallM / 2,
          },
        ],
  );
  return {
    wheelbaseM,
    wheelRadiusM: vehicle.axleLift?.wheelRadiusM ?? WHEEL_RADIUS_M,
    body,
    things,
    centre: centreOf(state, wheelbaseM),
    extent: {
      frontM: Math.min(body.frontM, ...placed.map(({ from }) => from)),
      rearM: Math.max(body.rearM, ...placed.map(({ to }) => to)),
      topM: Math.max(body.roofM, ...placed.map(({ top }) => top)),
    },
  };
}

/** The axle loads tell where along the vehicle the whole of it balances. */
function centreOf(state: MassState, wheelbaseM: number | null): Scene['centre'] {
  if (wheelbaseM === null || state.front === null || state.rear === null) return null;
  const onAxlesKg = state.front.kg + state.rear.kg;
  return { xM: (state.rear.kg / onAxlesKg) * wheelbaseM, heightM: state.cgHeightM };
}

function thingsOf(rig: RigFile, mass: MassReport, state: MassState): Thing[] {
  const { people = [], pets = [], gear = [], tanksEmpty } = rig.vehicle ?? {};
  const shares = heldShares(mass.containers, state, tanksEmpty ?? 'together');
  const containers = mass.containers
    .map((container, index) => ({ container, litres: shares[index] ?? 0 }))
    .filter(({ container }) => container.litres > 0)
    .map(({ container, litres }) => {
      const sideM = Math.sqrt(container.litres / 1000 / ACROSS_M);
      return {
        path: container.path,
        name: container.name,
        what: container.commodity,
        place: container.position,
        widthM: sideM,
        tallM: sideM,
        full: litres / container.litres,
        kg: container.emptyKg + litres * container.kgPerLitre,
      };
    });
  const riders = [
    ...people.map((one, index) => ({
      ...one,
      path: `/vehicle/people/${index}`,
      what: 'person' as const,
      name: one.name ?? (index === 0 ? 'driver' : 'person'),
    })),
    ...pets.map((one, index) => ({
      ...one,
      path: `/vehicle/pets/${index}`,
      what: 'pet' as const,
      name: one.name ?? 'pet',
    })),
    ...gear.map((one, index) => ({ ...one, path: `/vehicle/gear/${index}`, what: 'gear' as const })),
  ].map(({ path, name, what, kg, position }) => {
    const sideM = Math.min(0.9, Math.max(0.18, Math.sqrt(kg / GEAR_KG_PER_M3 / ACROSS_M)));
    const size = what === 'person' ? PERSON : { widthM: sideM, tallM: sideM };
    return { path, name, what, place: position ?? null, ...size, full: null, kg };
  });
  return [...containers, ...riders].map((thing, index) => ({ ...thing, number: index + 1 }));
}
