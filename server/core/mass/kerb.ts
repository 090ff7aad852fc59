import type { KerbIncludes, Vehicle } from '../../contract/vehicle.ts';
import { DRIVER_KG } from '../defaults/rig-defaults.ts';
import { cgHeightFromLift } from './statics.ts';

/** What the kerb mass includes: percents of the tanks' capacity, kilograms of driver. */
export interface KerbContents {
  fuelPercent: number;
  waterPercent: number;
  driverKg: number;
}

/** "Mass in running order": tanks at 90 % at least (Regulation (EU) No 1230/2012, Art. 2 (4); check-values V6). */
const RUNNING_ORDER_FUEL_PERCENT = 90;

export function kerbContentsOf(includes: KerbIncludes): KerbContents {
  if (includes === 'running-order') {
    return { fuelPercent: RUNNING_ORDER_FUEL_PERCENT, waterPercent: 0, driverKg: DRIVER_KG };
  }
  // US curb weight: full fuel, no driver (from memory; check-values V7).
  if (includes === 'full-fuel-no-driver') return { fuelPercent: 100, waterPercent: 0, driverKg: 0 };
  return { ...includes, waterPercent: includes.waterPercent ?? 0 };
}

/** Height of the centre of gravity at kerb mass: told, or the mean of the steps of lifting; null where neither is. */
export function kerbCgHeightM(vehicle: Vehicle): number | null {
  const { cgHeightM, axleLift, axleKg, wheelbaseM, kerbKg } = vehicle;
  if (cgHeightM !== undefined) return cgHeightM;
  if (axleLift === undefined || axleKg === undefined || wheelbaseM === undefined) return null;
  const levelKg = axleLift.lifted === 'front' ? axleKg.rear : axleKg.front;
  const heights = axleLift.steps.map(({ degrees, groundAxleKg }) =>
    cgHeightFromLift({
      wheelbaseM,
      totalKg: kerbKg,
      wheelRadiusM: axleLift.wheelRadiusM,
      levelKg,
      liftedKg: groundAxleKg,
      degrees,
    }),
  );
  return heights.reduce((sum, height) => sum + height, 0) / heights.length;
}
