import { wholeAbove, wholeBelow } from '../../core/quantity/rounding.ts';

/** What one reads on the way is rounded to the side that one can rely on. */

/** Kilometres as a name has them. */
export const kmText = (km: number): string => String(Math.round(km));
/** Of a place that must not be passed: never beyond it. */
export const kmBefore = (km: number): string => String(Math.floor(km));

/** Whole litres, tenths below ten where they matter. */
const litreText = (litres: number, round: (value: number) => number): string =>
  litres < 9.95 ? String(round(litres * 10) / 10) : String(round(litres));
/** There is so much at least. */
export const atLeast = (litres: number): string => litreText(litres, wholeBelow);
/** So much is needed. */
export const needed = (litres: number): string => litreText(litres, wholeAbove);
