import type { Commodity } from '../../../contract/common.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { litresPerM, metresOf } from '../../quantity/rates.ts';
import type { Rig } from '../../rig/rig.ts';
import type { Trip } from '../../trip/settle-trip.ts';

/**
 * Litres that can be used at the start: what the user said, at most what the tanks give; full, with a caution, where
 * nobody was told. Since the last fill, use goes at the rate the verdict uses.
 */
export function startLevel(
  rig: Rig,
  trip: Trip,
  commodity: Commodity,
): { litres: number; cautions: Caution[] } {
  const fullL = rig[commodity].drawableL;
  const left = (litres: number) => ({ litres: Math.min(fullL, Math.max(0, litres)), cautions: [] });
  const { aboard } = trip;
  if (commodity === 'fuel') {
    if (aboard.fuelLitres !== undefined) return left(aboard.fuelLitres);
    if (aboard.fuelKmSinceFill !== undefined) {
      return left(fullL - metresOf(aboard.fuelKmSinceFill) * litresPerM(rig.fuel.litresPer100Km.high));
    }
  } else {
    if (aboard.waterLitres !== undefined) return left(aboard.waterLitres);
    if (aboard.waterDaysSinceFill !== undefined) {
      return left(fullL - aboard.waterDaysSinceFill * rig.water.litresPerDay.high);
    }
  }
  return {
    litres: fullL,
    cautions: [{ code: 'start-assumed-full', facts: { commodity }, fromM: 0, toM: 0 }],
  };
}
