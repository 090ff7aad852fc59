import type { Figure, Place, Unit } from './part.ts';

/** A figure as exact as it is. */
export const figure = (value: number, unit: Unit): Figure => ({ figure: value, unit });

/** A figure with at most so many decimals: 12.30 is "12.3". */
export const rounded = (value: number, unit: Unit, decimals = 1): Figure => ({
  figure: value,
  unit,
  decimals,
});

/** A figure with just so many decimals. */
export const fixed = (value: number, unit: Unit, decimals = 1): Figure => ({
  figure: value,
  unit,
  decimals,
  fixed: true,
});

/** A figure with just so many decimals, halves rounded up first: 0.35 is "0.4", whatever its float is. */
export const halfUp = (value: number, unit: Unit, decimals = 1): Figure => {
  const scale = 10 ** decimals;
  return fixed(Math.round(value * scale) / scale, unit, decimals);
};

/** The same figure without its unit. */
export const bare = (of: Figure): Figure => ({ ...of, bare: true });

/** Metres as the kilometres that people read. */
export const kmOf = (metres: number): number => metres / 1000;

/** A place of the route from its metres. */
export const placeAt = (metres: number, decimals?: number): Place =>
  decimals === undefined ? { place: kmOf(metres) } : { place: kmOf(metres), decimals };

/** What is missing is never told as less than it is: to a tenth, rounded up. */
export const upToTenth = (value: number): number => Math.ceil(value * 10) / 10;

/** A place with its tenths always: "km 212.0". */
export const exactPlace = (metres: number): Place => ({ place: kmOf(metres), decimals: 1, fixed: true });
