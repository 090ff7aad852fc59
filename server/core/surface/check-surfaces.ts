import type { SurfaceEntry } from '../../contract/surface.ts';
import type { Misfit } from '../phrases/misfits.ts';

/** First surface entry that runs backwards or has no length; null when there is none. */
export function checkSurfaces(surfaces: readonly SurfaceEntry[] | undefined): Misfit | null {
  for (const [index, entry] of (surfaces ?? []).entries()) {
    if (entry.fromKm < entry.toKm) continue;
    const { fromKm, toKm } = entry;
    return { path: `/surfaces/${index}`, misfit: 'stretch-backward', facts: { fromKm, toKm } };
  }
  return null;
}
