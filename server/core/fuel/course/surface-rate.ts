import type { Surface } from '../../../contract/surface.ts';
import type { RatePhrase } from '../../phrases/rig/fuel.ts';
import { litresPerM, metresOf } from '../../quantity/rates.ts';
import type { Rig } from '../../rig/rig.ts';
import { FUEL_KINDS } from '../engine/kinds.ts';
import { GRAVITY_M_S2, loadFactor } from '../engine/load.ts';
import { litresPer100KmAgainst, moreRolling } from '../engine/physics.ts';
import { relativeFactor } from '../engine/surface-factors.ts';
import { type FuelFacts, PACE_OF, type Rate } from './fuel-facts.ts';

/** What a surface takes at one end of the rig's range. */
export interface SurfaceRate {
  readonly litresPerWayM: number;
  readonly label: RatePhrase;
}

/** The multiple for load; 1 where the mass now or the observed mass is not told. */
export function loadFactorOf(rig: Rig, massKg: number | null): number {
  const { observed, loadPercentPer100Kg } = rig.fuel.model;
  if (massKg === null || observed.massKg === null || loadPercentPer100Kg === null) return 1;
  return loadFactor(massKg, observed.massKg, loadPercentPer100Kg);
}

/**
 * What the load takes beyond its percent of the rate: the surface's own rolling resistance under the kilograms above the
 * observed mass, against the fuel's energy. In sand a load costs several times what it does on a road.
 */
function loadRollingL({ rig, massKg }: FuelFacts, surface: Surface): number {
  const { observed, loadPercentPer100Kg, climb } = rig.fuel.model;
  if (massKg === null || observed.massKg === null || loadPercentPer100Kg === null) return 0;
  const newtons =
    moreRolling(surface, observed.surface) * Math.max(0, massKg - observed.massKg) * GRAVITY_M_S2;
  const energyMJPerL = FUEL_KINDS[rig.fuel.kind].energyMJPerL.typical;
  return litresPerM(litresPer100KmAgainst(newtons, climb.efficiency, energyMJPerL));
}

/** Litres for a metre of way on a surface: by distance, or by the hour where that is more. */
export function rateOn(facts: FuelFacts, surface: Surface, rate: Rate): SurfaceRate {
  const { model, litresPer100Km } = facts.rig.fuel;
  const ownRate = litresPer100Km[rate];
  const surfaceFactor = relativeFactor(model.factors, surface, model.observed.surface);
  const emptyL = litresPerM(ownRate) * surfaceFactor;
  const rollingL = loadRollingL(facts, surface);
  const load = loadFactorOf(facts.rig, facts.massKg) + rollingL / emptyL;
  const byDistance = emptyL * load;
  const kmPerHour = facts.kmPerHour(surface, PACE_OF[rate]);
  const litresPerHour = model.perHour.crawling;
  const byHour = litresPerHour / metresOf(kmPerHour);
  return byHour > byDistance
    ? { litresPerWayM: byHour, label: { phrase: 'rate-by-hour', facts: { litresPerHour, kmPerHour } } }
    : {
        litresPerWayM: byDistance,
        label: {
          phrase: 'rate-by-distance',
          facts: { litresPer100Km: ownRate, surfaceFactor, loadFactor: load },
        },
      };
}
