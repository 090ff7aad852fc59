import type { UseRange } from '../../quantity/use-range.ts';
import type { Aboard, GradedStore } from '../needs/graded-store.ts';
import { atEnds } from '../needs/range.ts';

/** Days that all water lasts at each rate; the low rate lasts longest. Rates above 0. */
export const enduranceOf = (litres: number, perDay: UseRange): UseRange =>
  atEnds((end) => litres / perDay[end]);

/**
 * Days until each grade ends with both used as reckoned and no supply on the way: each draws what is kept for it
 * first, then what serves both. Null for a grade that is not used.
 */
export function gradeEndurance(
  store: GradedStore,
  aboard: Aboard,
): { drinking: UseRange | null; washing: UseRange | null } {
  const drink = store.drinkingPerDay;
  const wash = store.washingPerDay;
  const range = (own: UseRange, of: (end: keyof UseRange) => number): UseRange | null =>
    own.high === 0 ? null : atEnds((end) => of(own[end] > 0 ? end : own.typical > 0 ? 'typical' : 'high'));
  return {
    drinking: range(drink, (end) =>
      daysOfFirst(aboard.drinkingL, drink[end], aboard.washingL, wash[end], aboard.anyL),
    ),
    washing: range(wash, (end) =>
      daysOfFirst(aboard.washingL, wash[end], aboard.drinkingL, drink[end], aboard.anyL),
    ),
  };
}

/**
 * Days until the first of two uses ends. Either has its own water (`ownL`, `otherL`) and draws on the common `anyL`
 * when that is used up.
 */
function daysOfFirst(ownL: number, ownRate: number, otherL: number, otherRate: number, anyL: number): number {
  const alone = (ownL + anyL) / ownRate;
  if (alone * otherRate <= otherL) return alone;
  const shared = (ownL + anyL + otherL) / (ownRate + otherRate);
  // Where the other drew all the common water before the own was used up, the own lasts by itself.
  return Math.max(ownL / ownRate, shared);
}
