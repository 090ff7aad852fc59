import { at } from '../../lists/at.ts';

/**
 * Expected days of survival in the desert, for ordering and cautions only: resting men of the 1940s, never a ration.
 * Adolph et al., Physiology of Man in the Desert (1947), as reprinted in US survival manuals; the 110 °F row seen in
 * part, the full grid from memory.
 */
export const SURVIVAL_QUARTS = [0, 1, 2, 4, 10, 20] as const;

interface SurvivalRow {
  /** Highest shade temperature of the day, °F. */
  shadeF: number;
  /** By `SURVIVAL_QUARTS` available for each man. */
  days: readonly number[];
}

/** No walking, in shade. */
export const RESTING_DAYS: readonly SurvivalRow[] = [
  { shadeF: 120, days: [2, 2, 2, 2.5, 3, 4.5] },
  { shadeF: 110, days: [3, 3, 3.5, 4, 5, 7] },
  { shadeF: 100, days: [5, 5.5, 6, 7, 9.5, 13.5] },
  { shadeF: 90, days: [7, 8, 9, 10.5, 15, 23] },
  { shadeF: 80, days: [9, 10, 11, 13, 19, 29] },
  { shadeF: 70, days: [10, 11, 12, 14, 20.5, 32] },
  { shadeF: 60, days: [10, 11, 12, 14, 21, 32] },
  { shadeF: 50, days: [10, 11, 12, 14.5, 21, 32] },
];

/** Walking by night until exhausted, resting after; by the first five of `SURVIVAL_QUARTS`. From memory. */
export const WALKING_DAYS: readonly SurvivalRow[] = [
  { shadeF: 120, days: [1, 2, 2, 2.5, 3] },
  { shadeF: 110, days: [2, 2, 2.5, 3, 3.5] },
  { shadeF: 100, days: [3, 3.5, 3.5, 4.5, 5.5] },
  { shadeF: 90, days: [5, 5.5, 5.5, 6.5, 8] },
  { shadeF: 80, days: [7, 7.5, 8, 9.5, 11.5] },
];

/** Days without any water, by the first row as hot or hotter than the shade temperature; hotter than all: the first. */
export function daysWithoutWater(temperatureC: number): { resting: number; walking: number } {
  const shadeF = (temperatureC * 9) / 5 + 32;
  const daysIn = (rows: readonly SurvivalRow[]): number =>
    at((rows.findLast((row) => row.shadeF >= shadeF - 1e-9) ?? at(rows, 0)).days, 0);
  return { resting: daysIn(RESTING_DAYS), walking: daysIn(WALKING_DAYS) };
}
