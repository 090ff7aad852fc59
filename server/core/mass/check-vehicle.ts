import type { RigFile } from '../../contract/rig.ts';
import type { Position, Vehicle } from '../../contract/vehicle.ts';
import { KERB_INCLUDES } from '../defaults/rig-defaults.ts';
import type { Misfit } from '../phrases/misfits.ts';
import { containersOf } from './containers.ts';
import { kerbContentsOf } from './kerb.ts';

/** Weighbridges and papers round: axle loads may miss the kerb mass by this, kg or share, the larger (ours). */
const AXLE_SUM_TOLERANCE = { kg: 20, share: 0.01 };
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
  const kerb = kerbContentsOf(vehicle.includes ?? KERB_INCLUDES);
  const contentsKg =
    kerb.driverKg +
    containersOf(rig, { fuel: kerb.fuelPercent, water: kerb.waterPercent }).reduce(
      (sum, container) => sum + container.kerbL * container.kgPerLitre,
      0,
    );
  const { kerbKg } = vehicle;
  if (contentsKg < kerbKg) return null;
  return { path: '/vehicle/kerbKg', misfit: 'kerb-below-contents', facts: { kerbKg, contentsKg } };
}

function axlesSum({ kerbKg, axleKg }: Vehicle): Misfit | null {
  if (axleKg === undefined) return null;
  const { front, rear } = axleKg;
  const toleranceKg = Math.max(AXLE_SUM_TOLERANCE.kg, AXLE_SUM_TOLERANCE.share * kerbKg);
  if (Math.abs(front + rear - kerbKg) <= toleranceKg) return null;
  return { path: '/vehicle/axleKg', misfit: 'axles-off-kerb', facts: { front, rear, kerbKg, toleranceKg } };
}

function kerbWithinLimits({ kerbKg, axleKg, permitted }: Vehicle): Misfit | null {
  const rows = [
    { key: 'totalKg', kg: kerbKg, limitKg: permitted?.totalKg },
    { key: 'frontKg', kg: axleKg?.front, limitKg: permitted?.frontKg },
    { key: 'rearKg', kg: axleKg?.rear, limitKg: permitted?.rearKg },
  ];
  for (const { key, kg, limitKg } of rows) {
    if (kg === undefined || limitKg === undefined || kg <= limitKg) continue;
    return { path: `/vehicle/permitted/${key}`, misfit: 'permitted-below-kerb', facts: { limitKg, kg } };
  }
  return null;
}

function oneHeight(vehicle: Vehicle): Misfit | null {
  if (vehicle.axleLift === undefined) return null;
  const path = '/vehicle/axleLift';
  if (vehicle.cgHeightM !== undefined) return { path, misfit: 'height-twice', facts: {} };
  if (vehicle.axleKg !== undefined && vehicle.wheelbaseM !== undefined) return null;
  return { path, misfit: 'lift-without-axles', facts: {} };
}

function cabinOpen({ cabin }: Vehicle): Misfit | null {
  if (cabin === undefined) return null;
  if (cabin.fromM < cabin.toM && cabin.floorHeightM < cabin.roofHeightM) return null;
  const { fromM, toM, floorHeightM, roofHeightM } = cabin;
  return {
    path: '/vehicle/cabin',
    misfit: 'cabin-inside-out',
    facts: { fromM, toM, floorHeightM, roofHeightM },
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
  const { behindFrontAxleM, sideM = 0 } = position;
  if (wheelbaseM !== undefined) {
    const lastM =
      wheelbaseM + (bodyRearOverhangM === undefined ? UNTOLD_OVERHANG_M : bodyRearOverhangM + CARRIER_M);
    if (behindFrontAxleM < -AHEAD_M || behindFrontAxleM > lastM) {
      return {
        path: `${path}/position/behindFrontAxleM`,
        misfit: 'place-beyond-length',
        facts: { behindFrontAxleM, aheadM: AHEAD_M, lastM, wheelbaseM },
      };
    }
  }
  if (trackM !== undefined && Math.abs(sideM) > trackM / 2 + BESIDE_M) {
    return {
      path: `${path}/position/sideM`,
      misfit: 'place-beyond-width',
      facts: { sideM, mostM: trackM / 2 + BESIDE_M, trackM },
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
