import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { defaultCanKg } from '../../mass/containers.ts';
import { fuelKgPerLitre, WATER_KG_PER_L } from '../../mass/densities.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';

/** Kilograms of a litre. */
export const kgPerLitreOf = (rig: RigFile, commodity: Commodity): number =>
  commodity === 'fuel' ? fuelKgPerLitre(rig.fuel.kind) : WATER_KG_PER_L;

/** Mass of one can, empty and of its filling, kg. */
export function canKgOf(rig: RigFile, commodity: Commodity): { empty: number; filling: number } {
  const { litres = 20, emptyKg, fillPercent = 100 } = rig[commodity].cans ?? {};
  return {
    empty: emptyKg ?? defaultCanKg(commodity, litres),
    filling: ((litres * fillPercent) / 100) * kgPerLitreOf(rig, commodity),
  };
}

/** Mass of so many full cans, kg. */
export function fullCansKg(rig: RigFile, cans: Readonly<Record<Commodity, number>>): number {
  return COMMODITIES.reduce((sum, commodity) => {
    const { empty, filling } = canKgOf(rig, commodity);
    return sum + cans[commodity] * (empty + filling);
  }, 0);
}

/** Cans that the rig has. */
export const ownedCans = (rig: RigFile, commodity: Commodity): number => rig[commodity].cans?.owned ?? 0;

/** What so many cans, all full, weigh beyond the owned ones empty: the heaviest that a plan may make the vehicle. */
export function loadKg(rig: RigFile, cans: Readonly<Record<Commodity, number>>): number {
  return COMMODITIES.reduce((sum, commodity) => {
    const { empty, filling } = canKgOf(rig, commodity);
    return sum + cans[commodity] * filling + (cans[commodity] - ownedCans(rig, commodity)) * empty;
  }, 0);
}
