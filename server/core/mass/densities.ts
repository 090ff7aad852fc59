import type { FuelKind } from '../../contract/rig.ts';
import { FUEL_KINDS } from '../fuel/engine/kinds.ts';

/**
 * A litre of water, kg: 0.992 to 1.000 from 4 to 40 °C (Tanaka et al., Metrologia 38 (2001) 301-309; check-values
 * K15), so 1 is never too little and at most 0.8 % too much.
 */
export const WATER_KG_PER_L = 1;

/** A litre of fuel, kg: the heaviest that its standard allows, so that no load comes out too small. */
export const fuelKgPerLitre = (kind: FuelKind): number => FUEL_KINDS[kind].densityKgPerM3.high / 1000;
