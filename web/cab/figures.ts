import { wholeAbove, wholeBelow } from '../../server/core/quantity/rounding.ts';

const M_PER_KM = 1000;

/** What one can rely on: rounded down. */
export const atLeast = (value: number): string => String(Math.max(0, wholeBelow(value)));
/** What is missing or needed: rounded up. */
export const atMost = (value: number): string => String(Math.max(0, wholeAbove(value)));

/** Kilometres to drive, rounded up; of a place that must not be passed, rounded down. */
export const kmToDrive = (metres: number): string => atMost(metres / M_PER_KM);
export const kmBefore = (metres: number): string => atLeast(metres / M_PER_KM);

/** Tenths, rounded down: days that something lasts. */
export const tenthsAtLeast = (value: number): string => String(Math.max(0, wholeBelow(value * 10) / 10));

/** A kilometre of the road, with a tenth where it has one. */
export const kmOf = (metres: number): string => String(Math.round(metres / (M_PER_KM / 10)) / 10);

/** The same in a list, whole. */
export const wholeKmOf = (metres: number): string => String(Math.round(metres / M_PER_KM));

export const metresOf = (km: number): number => km * M_PER_KM;

/** A distance off the road: metres, or kilometres where it is that far. */
export const offRoad = (metres: number): { readonly figure: string; readonly inKm: boolean } =>
  metres < M_PER_KM
    ? { figure: String(Math.ceil(metres / 10) * 10), inKm: false }
    : { figure: kmOf(metres), inKm: true };
