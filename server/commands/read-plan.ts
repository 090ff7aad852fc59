import type { RigAndTrip } from '../app/input/plan-input.ts';
import type { Outcome } from '../core/input/problem.ts';
import { readRigFile } from '../io/rig-file.ts';
import { readTripFile } from '../io/trip-file.ts';

/** Reads and checks the rig file and the trip file, null when there is none. */
export async function readPlan(rigPath: string, tripPath: string | null): Promise<Outcome<RigAndTrip>> {
  const rig = await readRigFile(rigPath);
  if (!rig.ok) return rig;
  if (tripPath === null) return { ok: true, value: { rig: rig.value, trip: {} } };
  const trip = await readTripFile(tripPath, rig.value);
  return trip.ok ? { ok: true, value: { rig: rig.value, trip: trip.value } } : trip;
}
