import type { RigFile } from '../../contract/rig.ts';
import type { Misfit } from '../quantity/misfit.ts';

/** First surface whose three speeds are out of order; null when there is none. */
export function checkPace(pace: RigFile['pace']): Misfit | null {
  for (const [surface, own] of Object.entries(pace.bySurface ?? {})) {
    const { slow, typical, fast } = own.kmPerHour;
    if (slow <= typical && typical <= fast) continue;
    const path = `/pace/bySurface/${surface}/kmPerHour`;
    return {
      path,
      came: `slow ${slow}, typical ${typical}, fast ${fast}`,
      expected: 'slow <= typical <= fast',
      remedy: `Put the three numbers of ${path} in order`,
    };
  }
  return null;
}
