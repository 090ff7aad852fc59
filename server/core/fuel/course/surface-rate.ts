import type { Surface } from '../../../contract/surface.ts';
import type { RatePhrase } from '../../phrases/fuel.ts';
import { litresPerM, metresOf } from '../../quantity/rates.ts';
import type { Rig } from '../../rig/rig.ts';
import { loadFactor } from '../engine/load.ts';
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

/** Litres for a metre of way on a surface: by distance, or by the hour where that is more. */
export function rateOn(facts: FuelFacts, surface: Surface, rate: Rate): SurfaceRate {
  const { model, litresPer100Km } = facts.rig.fuel;
  const ownRate = litresPer100Km[rate];
  const surfaceFactor = relativeFactor(model.factors, surface, model.observed.surface);
  const load = loadFactorOf(facts.rig, facts.massKg);
  const byDistance = litresPerM(ownRate) * surfaceFactor * load;
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
