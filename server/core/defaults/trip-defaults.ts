/*
 * What is taken where a trip does not tell it, in the units of the file; all of it is ours. Each figure stands here
 * alone.
 */

/** How far off the route a supply may lie, km. */
export const CORRIDOR_KM = 5;
/** By how much a way is longer than its line where the surface is unknown. */
export const ALLOWANCE_PERCENT = 5;
/** A way off the route as a multiple of the straight line. */
export const DETOUR_FACTOR = 1.3;
/**
 * Straight steps longer than this are a sketch, km. The longest step of the real road track that we hold is 4.8 km,
 * routes of via points have steps of tens of kilometres.
 */
export const SPARSE_STEP_KM = 5;
export const CAMP_DAYS = 1;
/** Fuel: a station's kind suffices. Water: its tags must say so. */
export const COUNTING = { fuel: 'implied', water: 'stated' } as const;
export const PART = 'all';
