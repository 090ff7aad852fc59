import type { DistanceUnit, VolumeUnit } from './columns.ts';

/** International mile, exact (NIST Handbook 44, appendix C; from memory). */
export const KM_PER: Record<DistanceUnit, number> = { km: 1, mi: 1.609344 };

/** US gallon of 231 cubic inches and imperial gallon, exact (NIST Handbook 44, appendix C; from memory). */
export const LITRES_PER: Record<VolumeUnit, number> = {
  l: 1,
  'gal (US)': 3.785411784,
  'gal (imp)': 4.54609,
};

/** Avoirdupois pound, exact (as above). */
export const KG_PER_LB = 0.45359237;
