import type { UseRange } from '../../quantity/use-range.ts';

/** Dogs, litres for each kg and day, thermoneutral: Merck Veterinary Manual, nutritional requirements. */
const DOG_LITRES_PER_KG = { low: 0.044, high: 0.066 };

/**
 * Litres a day of a dog at rest in neutral climate by its body mass, kg: one millilitre for each kcal of maintenance
 * energy, 1.6 × 70 × kg^0.75 (resting energy and adult factor of small-animal nutrition, NRC 2006).
 */
const allometricLitresPerDay = (kg: number): number => (1.6 * 70 * kg ** 0.75) / 1000;

/** Litres a day of one pet in mild weather at rest: the wider bounds of both rules. */
export function petLitresPerDay(kg: number): UseRange {
  const typical = allometricLitresPerDay(kg);
  return {
    low: Math.min(DOG_LITRES_PER_KG.low * kg, typical),
    typical,
    high: Math.max(DOG_LITRES_PER_KG.high * kg, typical),
  };
}
