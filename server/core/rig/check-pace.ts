import type { RigFile } from '../../contract/rig.ts';
import type { Misfit } from '../phrases/misfits.ts';

type Speeds = Exclude<RigFile['pace']['kmPerHour'], number>;

/** First three speeds of a pace that are out of order; null when there are none. */
export function checkPace(pace: RigFile['pace']): Misfit | null {
  const main = pace.kmPerHour;
  const mainMisfit = typeof main === 'number' ? null : speedsInOrder(main, '/pace/kmPerHour');
  if (mainMisfit !== null) return mainMisfit;
  for (const [surface, own] of Object.entries(pace.bySurface ?? {})) {
    const misfit = speedsInOrder(own.kmPerHour, `/pace/bySurface/${surface}/kmPerHour`);
    if (misfit !== null) return misfit;
  }
  return null;
}

function speedsInOrder({ slow, typical, fast }: Speeds, path: string): Misfit | null {
  if (slow <= typical && typical <= fast) return null;
  return { path, misfit: 'pace-order', facts: { slow, typical, fast } };
}
