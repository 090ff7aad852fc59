import type { Profile } from '../../gaps/course/profile.ts';
import type { Rig } from '../../rig/rig.ts';
import type { Heights } from '../../route/elevation.ts';
import { FUEL_KINDS } from '../engine/kinds.ts';
import { liftL } from '../engine/lift.ts';
import type { FuelFacts } from './fuel-facts.ts';

/** What climbs are reckoned with. */
export interface ClimbFacts {
  readonly heights: Heights;
  readonly litresPerClimbM: number;
  /** Litres that a metre of descent spares. */
  readonly sparedPerDescentM: number;
  /** Litres that the way takes on the level. */
  readonly level: Profile;
}

/**
 * The mass that climbs lift: that of now, at least the observed one, as load never lowers a need; null where neither
 * is told. Descents spare by the observed mass only, so that more mass never makes less fuel.
 */
export function liftedMassKg(rig: Rig, massKg: number | null): number | null {
  const observedKg = rig.fuel.model.observed.massKg;
  return massKg === null ? observedKg : Math.max(massKg, observedKg ?? 0);
}

/** What climbs are reckoned with, beside the litres of the level; null where there is nothing to reckon them from. */
export function climbFactsOf({ rig, heights, massKg }: FuelFacts, level: Profile): ClimbFacts | null {
  const liftedKg = liftedMassKg(rig, massKg);
  if (heights === null || liftedKg === null) return null;
  const { climb, observed } = rig.fuel.model;
  return {
    heights,
    litresPerClimbM: litresPerClimbM(rig, liftedKg),
    sparedPerDescentM: climb.giveBack * litresPerClimbM(rig, observed.massKg ?? 0),
    level,
  };
}

/** Litres that a metre of climb takes. */
const litresPerClimbM = (rig: Rig, massKg: number): number =>
  liftL(massKg, 1, rig.fuel.model.climb.efficiency, FUEL_KINDS[rig.fuel.kind].energyMJPerL.typical);
