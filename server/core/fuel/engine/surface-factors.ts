import type { Surface } from '../../../contract/surface.ts';

/**
 * Use on each surface as a multiple of that on sealed road, load and pace alike: ours. Studies of paved roads, carried
 * on to gravel, suggest 1.10 to 1.18 (check-values F22); for sand, a quarter more is commonly planned with (F25), soft
 * sand takes more. What is unknown is taken a little worse than gravel's best.
 */
export const SURFACE_FACTORS: Record<Surface, number> = {
  sealed: 1,
  gravel: 1.15,
  track: 1.25,
  sand: 1.5,
  rock: 1.35,
  mud: 1.5,
  salt: 1.15,
  unknown: 1.15,
};

/**
 * The multiple of the user's own rate: the factor of the surface over that of the surface on which the rate was
 * observed, so that a rate learned in sand is not raised for sand again. Where it is not known on what the rate was
 * observed, it is reckoned from sealed road and never lowered; where it is not known what is driven on, the rate is
 * never lowered either.
 */
export function relativeFactor(
  factors: Readonly<Record<Surface, number>>,
  surface: Surface,
  observed: Surface,
): number {
  if (surface === observed) return 1;
  if (observed === 'unknown') return Math.max(1, factors[surface] / factors.sealed);
  const factor = factors[surface] / factors[observed];
  return surface === 'unknown' ? Math.max(1, factor) : factor;
}
