import type { Crew } from '../../contract/crew.ts';
import type { FuelKind, RigFile } from '../../contract/rig.ts';
import type { CrewUse } from '../crew/needs/crew-use.ts';
import type { GradedStore } from '../crew/needs/graded-store.ts';
import type { FuelModel } from '../fuel/engine/fuel-model.ts';
import type { HelpReason } from '../phrases/rig/crew.ts';
import { metresOf } from '../quantity/rates.ts';
import type { UseRange } from '../quantity/use-range.ts';
import type { Treatment } from '../treatment/line/treatment.ts';

/** What must still be aboard on arrival: a base and a share of what the gap needs. */
export interface Reserve {
  base: { unit: 'km' | 'litres' | 'fraction' | 'days'; value: number; why?: HelpReason };
  /** 0 to 1. */
  shareOfNeed: number;
}

export interface Store {
  /** What the fixed tanks give: capacity less the unusable rest, litres. */
  drawableL: number;
  canL: number;
  cansOwned: number;
  /** False for gases, which go in fixed tanks only: then none is owned, and none can be got. */
  takesCans: boolean;
  reserve: Reserve;
}

/** A rig with every default filled in, ready to be reckoned with. */
export interface Rig {
  name: string;
  fuel: Store & { kind: FuelKind; litresPer100Km: UseRange; model: FuelModel };
  water: Store & {
    litresPerDay: UseRange;
    /**
     * Drinking water beyond that, litres a day at the high end, on the hottest stretch of the trip; none where it is left
     * out. Courses of water have it.
     */
    addedByHeatPerDay?: number;
    /** Of it at the high end what comes out of the taps: without what reverse osmosis throws away. */
    tapLitresPerDay: number;
    /** What each grade takes and which litres are kept for one; null where no crew is told. */
    grades: GradedStore | null;
  };
  /** Who drinks from the tanks; null where only litres a day are told. */
  crew: { file: Crew; use: CrewUse } | null;
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

/** Litres of water in a day where most is used: on the hottest stretch, at the rate the verdict uses. */
export const mostWaterPerDay = ({ water }: Pick<Rig, 'water'>): number =>
  water.litresPerDay.high + (water.addedByHeatPerDay ?? 0);

/** Metres of way in a day at the pace the verdict uses. */
export const metresPerDayOf = (rig: Rig): number => metresOf(rig.pace.hoursPerDay * rig.pace.kmPerHour.slow);
