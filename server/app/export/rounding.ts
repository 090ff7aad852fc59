/** What one reads on the way is rounded to the side that one can rely on. */

/** Less than this is noise of the reckoning and no reason for one more. */
const NOISE = 1e-6;
const up = (value: number): number => Math.ceil(value - NOISE);
const down = (value: number): number => Math.floor(value + NOISE);

/** Kilometres as a name has them. */
export const kmText = (km: number): string => String(Math.round(km));
/** Of a place that must not be passed: never beyond it. */
export const kmBefore = (km: number): string => String(Math.floor(km));

/** Whole litres, tenths below ten where they matter. */
const litreText = (litres: number, round: (value: number) => number): string =>
  litres < 9.95 ? String(round(litres * 10) / 10) : String(round(litres));
/** There is so much at least. */
export const atLeast = (litres: number): string => litreText(litres, down);
/** So much is needed. */
export const needed = (litres: number): string => litreText(litres, up);

/** Whole litres for a gauge. */
export const neededWhole = (litres: number): number => up(litres);
export const aboardWhole = (litres: number): number => down(litres);
/** What is aboard beside what is needed: rounded down, but where it covers the need never below it. */
export const aboardBeside = (aboardL: number, neededL: number): number =>
  aboardL >= neededL - NOISE ? Math.max(aboardWhole(aboardL), neededWhole(neededL)) : aboardWhole(aboardL);
