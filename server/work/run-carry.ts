import type { LoadedTrip } from '../app/loaded-trip.ts';
import type { PlannedTrip } from '../app/plan-trip.ts';
import type { RigFile } from '../contract/rig.ts';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome } from '../core/input/problem.ts';
import type { tasks } from './carry-tasks.ts';
import { packTrip } from './pack.ts';
import { WorkerPool } from './pool.ts';
import { PLAN_LESS } from './refusals.ts';

/** For the plan itself on the command line, where nobody waits at a screen (ours). */
const PLAN_SECONDS = 20;
/** For all of it: analysis, plan, ways out, failures. */
const TIMEOUT_MS = 180_000;
const WORKER_HEAP_MB = 1_024;

/** Plans a loaded trip in a worker that ends afterwards. */
export async function runCarry(
  loaded: LoadedTrip,
  rig: RigFile,
  trip: TripFile,
  today: string,
): Promise<Outcome<PlannedTrip>> {
  const pool = new WorkerPool<typeof tasks>({
    tasks: new URL('./carry-tasks.ts', import.meta.url),
    size: 1,
    maxWaiting: 1,
    maxHeapMb: WORKER_HEAP_MB,
    remedy: PLAN_LESS,
  });
  try {
    const packed = packTrip({ ...loaded, ground: [] });
    const ask = { id: 'only', packed, rig, trip, today, seconds: PLAN_SECONDS, extras: true };
    return await pool.run('plan', ask, { timeoutMs: TIMEOUT_MS });
  } finally {
    await pool.close();
  }
}
