import type { FuelKind } from '../../../contract/rig.ts';

/** In a sentence: "sells diesel". */
export const FUEL_WORDS: Record<FuelKind, string> = {
  diesel: 'diesel',
  petrol: 'petrol',
  lpg: 'LPG',
  cng: 'CNG',
  kerosene: 'kerosene',
  lng: 'LNG',
  e85: 'E85',
};
