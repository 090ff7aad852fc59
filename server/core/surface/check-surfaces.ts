import type { SurfaceEntry } from '../../contract/surface.ts';
import type { Misfit } from '../quantity/misfit.ts';

/** First surface entry that runs backwards or has no length; null when there is none. */
export function checkSurfaces(surfaces: readonly SurfaceEntry[] | undefined): Misfit | null {
  for (const [index, entry] of (surfaces ?? []).entries()) {
    if (entry.fromKm < entry.toKm) continue;
    return {
      path: `/surfaces/${index}`,
      came: `from km ${entry.fromKm} to km ${entry.toKm}`,
      expected: 'fromKm before toKm',
      remedy: 'Give route km in the direction of travel',
    };
  }
  return null;
}
