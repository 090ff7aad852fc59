/** Highest degree of filling at 15 °C by initial boiling point: ADR 4.1.1.4 (a), percent (check-values K6). */
const BY_BOILING_POINT = [
  { belowC: 60, percent: 90 },
  { belowC: 100, percent: 92 },
  { belowC: 200, percent: 94 },
  { belowC: 300, percent: 96 },
  { belowC: Number.POSITIVE_INFINITY, percent: 98 },
] as const;

/** Percent of its capacity to which a packaging may be filled at 15 °C, by where its content begins to boil. */
export const fillPercentByBoilingPoint = (boilingC: number): number =>
  BY_BOILING_POINT.find((row) => boilingC < row.belowC)?.percent ?? 98;

/** The rule's upper temperature, °C. */
const HOT_C = 50;

/**
 * Percent of its capacity to which a packaging may be filled at a temperature so that it is 98 % full at 50 °C: ADR
 * 4.1.1.4 (b), 98 / (1 + a (50 − t)), `a` the mean expansion for each kelvin (check-values K7).
 */
export const fillPercentAt = (expansionPerK: number, fillingC: number): number =>
  98 / (1 + expansionPerK * (HOT_C - fillingC));

/** Litres by which a filling grows when it warms; straight in temperature (check-values F9, F10). */
export const growthL = (litres: number, expansionPerK: number, byK: number): number =>
  litres * expansionPerK * byK;
