import type { FuelKind, RigFile } from '../../contract/rig.ts';
import type { FuelModel } from '../fuel/fuel-model.ts';
import type { Treatment } from '../treatment/treatment.ts';

/** Low, typical and high end of a quantity, in the unit of the name that holds it. */
export interface UseRange {
  low: number;
  typical: number;
  high: number;
}

/** What must still be aboard on arrival: a base and a share of what the gap needs. */
export interface Reserve {
  base: { unit: 'km' | 'litres' | 'fraction' | 'days'; value: number };
  /** 0 to 1. */
  shareOfNeed: number;
}

export interface Store {
  /** What the fixed tanks give: capacity less the unusable rest, litres. */
  drawableL: number;
  canL: number;
  cansOwned: number;
  reserve: Reserve;
}

/** A rig with every default filled in, ready to be reckoned with. */
export interface Rig {
  name: string;
  fuel: Store & { kind: FuelKind; litresPer100Km: UseRange; model: FuelModel };
  water: Store & { litresPerDay: UseRange };
  pace: {
    hoursPerDay: number;
    kmPerHour: { slow: number; typical: number; fast: number };
    /** Where the rig tells it by surface. */
    bySurface?: NonNullable<RigFile['pace']['bySurface']>;
  };
  ropeAndBucket: boolean;
  /** Null for a rig without one. */
  treatment: Treatment | null;
}

/** Kilometres of way in a day at the pace the verdict uses. */
export const kmPerDayOf = (rig: Rig): number => rig.pace.hoursPerDay * rig.pace.kmPerHour.slow;
