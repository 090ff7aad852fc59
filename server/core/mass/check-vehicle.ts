import type { RigFile } from '../../contract/rig.ts';
import type { Position, Vehicle } from '../../contract/vehicle.ts';
import type { Misfit } from '../quantity/misfit.ts';
import { containersOf } from './containers.ts';
import { DEFAULT_INCLUDES, kerbContentsOf } from './kerb.ts';

/** Weighbridges and papers round: axle loads may miss the kerb mass by this, kg or share, the larger (ours). */
export const AXLE_SUM_TOLERANCE = { kg: 20, share: 0.01 };
/** Things stick out: ahead of the front axle, behind the body on a carrier, beside the wheels, metres (ours). */
const AHEAD_M = 2;
const CARRIER_M = 1.5;
const BESIDE_M = 0.6;
/** Behind the rear axle where the body's overhang is not told, metres (ours). */
const UNTOLD_OVERHANG_M = 3;

/** First contradiction within the masses of a rig; null when there is none. */
export function checkVehicle(rig: RigFile): Misfit | null {
  const { vehicle } = rig;
  if (vehicle === undefined) return null;
  return (
    kerbHoldsItsContents(rig, vehicle) ??
    axlesSum(vehicle) ??
    kerbWithinLimits(vehicle) ??
    oneHeight(vehicle) ??
    cabinOpen(vehicle) ??
    positionsPossible(rig, vehicle)
  );
}

function kerbHoldsItsContents(rig: RigFile, vehicle: Vehicle): Misfit | null {
  const kerb = kerbContentsOf(vehicle.includes ?? DEFAULT_INCLUDES);
  const contentsKg =
    kerb.driverKg +
    containersOf(rig, { fuel: kerb.fuelPercent, water: kerb.waterPercent }).reduce(
      (sum, container) => sum + container.kerbL * container.kgPerLitre,
      0,
    );
  if (contentsKg < vehicle.kerbKg) return null;
  return {
    path: '/vehicle/kerbKg',
    came: `${vehicle.kerbKg} kg, of which fuel, water and driver are ${Math.round(contentsKg)} kg`,
    expected: 'more than what the kerb mass includes',
    remedy: 'Correct kerbKg or the tanks, or give emptyKg for tanks that were fitted later',
  };
}

function axlesSum({ kerbKg, axleKg }: Vehicle): Misfit | null {
  if (axleKg === undefined) return null;
  const sumKg = axleKg.front + axleKg.rear;
  const toleranceKg = Math.max(AXLE_SUM_TOLERANCE.kg, AXLE_SUM_TOLERANCE.share * kerbKg);
  if (Math.abs(sumKg - kerbKg) <= toleranceKg) return null;
  return {
    path: '/vehicle/axleKg',
    came: `front ${axleKg.front} kg and rear ${axleKg.rear} kg, together ${sumKg} kg`,
    expected: `the kerb mass of ${kerbKg} kg, give or take ${Math.round(toleranceKg)} kg`,
    remedy: 'Give the axle loads as weighed at kerb mass, or correct kerbKg',
  };
}

function kerbWithinLimits({ kerbKg, axleKg, permitted }: Vehicle): Misfit | null {
  const rows = [
    { key: 'totalKg', kg: kerbKg, limit: permitted?.totalKg },
    { key: 'frontKg', kg: axleKg?.front, limit: permitted?.frontKg },
    { key: 'rearKg', kg: axleKg?.rear, limit: permitted?.rearKg },
  ];
  for (const { key, kg, limit } of rows) {
    if (kg === undefined || limit === undefined || kg <= limit) continue;
    return {
      path: `/vehicle/permitted/${key}`,
      came: `${limit} kg, while ${kg} kg rest there at kerb mass`,
      expected: 'at least what the vehicle weighs at kerb mass',
      remedy: `Correct /vehicle/permitted/${key} or the mass at kerb`,
    };
  }
  return null;
}

function oneHeight(vehicle: Vehicle): Misfit | null {
  if (vehicle.axleLift === undefined) return null;
  if (vehicle.cgHeightM !== undefined) {
    return {
      path: '/vehicle/axleLift',
      came: 'cgHeightM and axleLift',
      expected: 'one of the two',
      remedy: 'Keep cgHeightM if the height is known, else axleLift',
    };
  }
  if (vehicle.axleKg !== undefined && vehicle.wheelbaseM !== undefined) return null;
  return {
    path: '/vehicle/axleLift',
    came: 'axleLift without axleKg and wheelbaseM',
    expected: 'axle loads and wheelbase beside it',
    remedy: 'Give axleKg and wheelbaseM, or leave axleLift out',
  };
}

function cabinOpen({ cabin }: Vehicle): Misfit | null {
  if (cabin === undefined) return null;
  if (cabin.fromM < cabin.toM && cabin.floorHeightM < cabin.roofHeightM) return null;
  return {
    path: '/vehicle/cabin',
    came: `from ${cabin.fromM} to ${cabin.toM} m, floor ${cabin.floorHeightM}, roof ${cabin.roofHeightM} m`,
    expected: 'fromM before toM and the floor below the roof',
    remedy: 'Give metres behind the front axle and above the ground',
  };
}

function positionsPossible(rig: RigFile, vehicle: Vehicle): Misfit | null {
  for (const { path, position } of positionsOf(rig, vehicle)) {
    const misfit = position === undefined ? null : positionPossible(path, position, vehicle);
    if (misfit !== null) return misfit;
  }
  return null;
}

function positionPossible(path: string, position: Position, vehicle: Vehicle): Misfit | null {
  const { wheelbaseM, trackM, bodyRearOverhangM } = vehicle;
  const { behindFrontAxleM: xM, sideM = 0 } = position;
  if (wheelbaseM !== undefined) {
    const lastM =
      wheelbaseM + (bodyRearOverhangM === undefined ? UNTOLD_OVERHANG_M : bodyRearOverhangM + CARRIER_M);
    if (xM < -AHEAD_M || xM > lastM) {
      return {
        path: `${path}/position/behindFrontAxleM`,
        came: `${xM} m behind the front axle`,
        expected: `between ${-AHEAD_M} and ${Number(lastM.toFixed(2))} m on a vehicle with a wheelbase of ${wheelbaseM} m`,
        remedy: 'Measure from the front axle rearward, in metres',
      };
    }
  }
  if (trackM !== undefined && Math.abs(sideM) > trackM / 2 + BESIDE_M) {
    return {
      path: `${path}/position/sideM`,
      came: `${sideM} m from the middle`,
      expected: `at most ${Number((trackM / 2 + BESIDE_M).toFixed(2))} m with a track of ${trackM} m`,
      remedy: 'Measure from the middle of the vehicle, left negative, in metres',
    };
  }
  return null;
}

function positionsOf(rig: RigFile, vehicle: Vehicle): { path: string; position: Position | undefined }[] {
  const at = (path: string, list: readonly { position?: Position }[] | undefined) =>
    (list ?? []).map(({ position }, index) => ({ path: `${path}/${index}`, position }));
  return [
    ...at('/fuel/tanks', rig.fuel.tanks),
    { path: '/fuel/cans', position: rig.fuel.cans?.position },
    ...at('/water/tanks', rig.water.tanks),
    { path: '/water/cans', position: rig.water.cans?.position },
    ...at('/vehicle/people', vehicle.people),
    ...at('/vehicle/pets', vehicle.pets),
    ...at('/vehicle/gear', vehicle.gear),
  ];
}
