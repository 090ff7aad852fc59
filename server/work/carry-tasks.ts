import { type PlannedTrip, planTrip } from '../app/plan-trip.ts';
import type { RigFile } from '../contract/rig.ts';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome } from '../core/problem.ts';
import { openingHours } from '../io/opening-hours.ts';
import { loadSolver } from '../io/solver.ts';
import { unpackTrip } from './pack.ts';

export interface CarryAsk {
  packed: SharedArrayBuffer;
  rig: RigFile;
  trip: TripFile;
  today: string;
  seconds: number;
}

/** Planning, which blocks its thread while the solver is at it. */
export const tasks = {
  async plan({ packed, rig, trip, today, seconds }: CarryAsk): Promise<Outcome<PlannedTrip>> {
    const solver = await loadSolver();
    return planTrip(unpackTrip(packed), rig, trip, { today, openingHours, solver, seconds });
  },
};
