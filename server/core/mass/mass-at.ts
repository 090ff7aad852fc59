import type { RigFile } from '../../contract/rig.ts';
import { massModelOf } from './settle-mass.ts';
import { contentsAt, fixedMoments, type Levels, withContents } from './states.ts';

/**
 * Total mass with so many usable litres in the fixed tanks, cans empty, kg; null for a rig that tells no vehicle.
 * Levels above what the tanks hold count as full.
 */
export function massAt(file: RigFile, levels: Levels): number | null {
  const model = massModelOf(file);
  if (model === null) return null;
  return withContents(model, fixedMoments(model), contentsAt(model, levels, 'together')).kg;
}

/** Total mass with all fixed tanks full: the heaviest that the rig drives off a supply with, cans empty. */
export const massWithFullTanks = (file: RigFile): number | null =>
  massAt(file, { fuelL: Number.POSITIVE_INFINITY, waterL: Number.POSITIVE_INFINITY });
