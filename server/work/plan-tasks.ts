import type { RigFile } from '../contract/rig.ts';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome } from '../core/problem.ts';
import { readRigFile } from '../io/rig-file.ts';
import { readTripFile } from '../io/trip-file.ts';

export interface PlanAsk {
  rig: string;
  /** Null when there is no trip file. */
  trip: string | null;
}

export interface Plan {
  rig: RigFile;
  trip: TripFile;
}

/** Reading rig and trip, which can be done in a worker: the schemas' package is the largest that the command loads. */
export const tasks = {
  async readPlan(ask: PlanAsk): Promise<Outcome<Plan>> {
    const rig = await readRigFile(ask.rig);
    if (!rig.ok) return rig;
    if (ask.trip === null) return { ok: true, value: { rig: rig.value, trip: {} } };
    const trip = await readTripFile(ask.trip, rig.value);
    return trip.ok ? { ok: true, value: { rig: rig.value, trip: trip.value } } : trip;
  },
};
