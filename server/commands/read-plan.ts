import { fitPlan, type RigAndTrip } from '../app/input/plan-input.ts';
import type { RigFile } from '../contract/rig.ts';
import type { Outcome } from '../core/input/problem.ts';
import { readRigFile } from '../io/rig-file.ts';
import { readTripFile } from '../io/trip-file.ts';

/** Reads and checks the rig file and the trip file; what is not told is the kept trip's, where there is one. */
export async function readPlan(
  rigPath: string | undefined,
  tripPath: string | null,
  kept: RigAndTrip | null,
): Promise<Outcome<RigAndTrip>> {
  const rig = rigPath === undefined ? keptRig(kept) : await readRigFile(rigPath);
  if (!rig.ok) return rig;
  if (tripPath === null) return fitPlan(rig.value, kept?.trip);
  const trip = await readTripFile(tripPath, rig.value);
  return trip.ok ? { ok: true, value: { rig: rig.value, trip: trip.value } } : trip;
}

function keptRig(kept: RigAndTrip | null): Outcome<RigFile> {
  if (kept === null) throw new Error('a route without a rig was not refused');
  return { ok: true, value: kept.rig };
}
