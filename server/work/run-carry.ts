import { setFlagsFromString } from 'node:v8';
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
/** All of it, analysis, plan, ways out and failures, may take so many times as long as the plan itself. */
const ALL_OF_IT = 9;
const WORKER_HEAP_MB = 1_024;

/** What a loaded trip is planned with; `seconds` for the plan itself, where not the usual. */
interface CarryAsk {
  rig: RigFile;
  trip: TripFile;
  today: string;
  seconds?: number | undefined;
  /** Whether what the cab view is reckoned from is wanted. */
  cab?: boolean | undefined;
}

/**
 * The command line keeps its heaps small, with a megabyte for what is young: a plan, which lets go most of what it makes,
 * would spend half its time on clearing that away thousands of times.
 */
const roomForYoung = (): void => setFlagsFromString('--no-optimize-for-size --max-semi-space-size=4');

/** Plans a loaded trip in a worker that ends afterwards. */
export async function runCarry(
  loaded: LoadedTrip,
  { rig, trip, today, seconds = PLAN_SECONDS, cab }: CarryAsk,
): Promise<Outcome<PlannedTrip>> {
  roomForYoung();
  const pool = new WorkerPool<typeof tasks>({
    tasks: new URL('./carry-tasks.ts', import.meta.url),
    size: 1,
    maxWaiting: 1,
    maxHeapMb: WORKER_HEAP_MB,
    remedy: PLAN_LESS,
  });
  try {
    const packed = packTrip({ ...loaded, ground: [] });
    const ask = { key: 'only', packed, rig, trip, today, seconds, extras: true, cab };
    return await pool.run('plan', ask, { timeoutMs: ALL_OF_IT * seconds * 1000 });
  } finally {
    await pool.close();
  }
}
