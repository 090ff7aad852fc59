import type { FuelKind } from '../../../contract/rig.ts';
import type { UseRange } from '../../quantity/use-range.ts';

/**
 * What a litre of a fuel weighs, holds and does. Where density and energy come from stands with the words (fuel.ts of
 * server/words), as people are told of it.
 */
export interface FuelKindFacts {
  /** At 15 °C. */
  densityKgPerM3: UseRange;
  /** Net (lower) heating value of a litre, MJ. */
  energyMJPerL: UseRange;
  /** Where it begins to boil, °C (from memory); null for what is kept under pressure. */
  initialBoilingC: number | null;
  /** By how much of its volume it grows with each kelvin. */
  expansionPerK: number;
  /** Share of its energy that lifts a vehicle, where the rig does not say. */
  climbEfficiency: number;
  /** Engine idling without air conditioning, litres per hour, where the rig does not say. */
  idlingLPerHour: number;
}

/** Net MJ in a litre as ADR 2017, 1.1.3.2 (a), Note 1 has it (check-values F5). */
export const REGULATORY_MJ_PER_L = { diesel: 36, petrol: 32, lpg: 24, ethanol: 21, biodiesel: 33 } as const;

const E85_MJ_PER_L = 0.85 * REGULATORY_MJ_PER_L.ethanol + 0.15 * REGULATORY_MJ_PER_L.petrol;

/**
 * Idling: US DOE, Fact of the Week #861 (check-values F24): large petrol sedan 1.48 l/h, medium heavy diesel
 * 1.67 l/h, both above what most travellers' vehicles idle at (a 2.0 l diesel 0.64 l/h). Other fuels: petrol's, raised
 * by what a litre holds less (ours). Lifting: 35 % and 25 % are ours, from check-values F11 to F13.
 */
const DIESEL_IDLING = 1.67;
const PETROL_IDLING = 1.48;
const likePetrol = (mjPerL: number) => (PETROL_IDLING * REGULATORY_MJ_PER_L.petrol) / mjPerL;

export const FUEL_KINDS: Record<FuelKind, FuelKindFacts> = {
  diesel: {
    densityKgPerM3: { low: 820, typical: 832, high: 845 },
    energyMJPerL: { low: 35.81, typical: REGULATORY_MJ_PER_L.diesel, high: REGULATORY_MJ_PER_L.diesel },
    initialBoilingC: 170,
    expansionPerK: 0.00083,
    climbEfficiency: 0.35,
    idlingLPerHour: DIESEL_IDLING,
  },
  petrol: {
    densityKgPerM3: { low: 720, typical: 745, high: 775 },
    energyMJPerL: { low: 31.25, typical: REGULATORY_MJ_PER_L.petrol, high: 32.36 },
    initialBoilingC: 35,
    expansionPerK: 0.00095,
    climbEfficiency: 0.25,
    idlingLPerHour: PETROL_IDLING,
  },
  lpg: {
    densityKgPerM3: { low: 500, typical: 540, high: 580 },
    energyMJPerL: { low: 23, typical: REGULATORY_MJ_PER_L.lpg, high: 26 },
    // Liquid propane and butane grow about twice as much as petrol (from memory).
    initialBoilingC: null,
    expansionPerK: 0.0025,
    climbEfficiency: 0.25,
    idlingLPerHour: likePetrol(REGULATORY_MJ_PER_L.lpg),
  },
  cng: {
    densityKgPerM3: { low: 150, typical: 170, high: 185 },
    energyMJPerL: { low: 7.5, typical: 8.4, high: 9 },
    initialBoilingC: null,
    expansionPerK: 0,
    climbEfficiency: 0.25,
    idlingLPerHour: likePetrol(8.4),
  },
  lng: {
    densityKgPerM3: { low: 420, typical: 440, high: 470 },
    energyMJPerL: { low: 20, typical: 21, high: 23 },
    initialBoilingC: null,
    expansionPerK: 0.0035,
    climbEfficiency: 0.25,
    idlingLPerHour: likePetrol(21),
  },
  // Jet A-1 and heating kerosene: density and energy from memory.
  kerosene: {
    densityKgPerM3: { low: 775, typical: 800, high: 840 },
    energyMJPerL: { low: 33.2, typical: 34.4, high: 36 },
    initialBoilingC: 150,
    expansionPerK: 0.0009,
    climbEfficiency: 0.35,
    idlingLPerHour: DIESEL_IDLING,
  },
  e85: {
    densityKgPerM3: { low: 770, typical: 780, high: 790 },
    energyMJPerL: { low: 22, typical: E85_MJ_PER_L, high: 25 },
    initialBoilingC: 35,
    expansionPerK: 0.0011,
    climbEfficiency: 0.25,
    idlingLPerHour: likePetrol(E85_MJ_PER_L),
  },
};
