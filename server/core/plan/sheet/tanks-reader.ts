import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { type Container, containersOf, sharesOf, tanksOf } from '../../mass/containers.ts';

/** The fixed tanks of a commodity, in the order of the rig. */
export const fixedTanks = (file: RigFile, commodity: Commodity): readonly Container[] =>
  tanksOf({ containers: containersOf(file, { fuel: 0, water: 0 }) }, commodity);

/** Reads what is in each fixed tank from what is in all, litres; null where there are several and the rig does not tell how they empty. */
export function tanksReader(file: RigFile, commodity: Commodity): ((tankL: number) => number[]) | null {
  const tanks = fixedTanks(file, commodity);
  const tanksEmpty = file.vehicle?.tanksEmpty;
  if (tanks.length > 1 && tanksEmpty === undefined) return null;
  const emptying = tanksEmpty === 'in-order' ? 'first-first' : 'together';
  return (tankL) => sharesOf(tanks, tankL, emptying);
}
