import { stat } from 'node:fs/promises';
import type { Outcome } from '../core/problem.ts';
import type { Plan, PlanAsk, tasks } from './plan-tasks.ts';
import { WorkerPool } from './pool.ts';

/**
 * Extracts of more than this are read with as little else in memory as may be: the check of rig and trip then goes to
 * a worker that ends before the reading begins (some 40 MB less at the peak, half a second more). Ours.
 */
const LARGE_BYTES = 64_000_000;
const TIMEOUT_MS = 60_000;
const WORKER_HEAP_MB = 256;

/** Reads and checks the rig and the trip, ahead of reading these extracts. */
export async function readPlan(ask: PlanAsk, extracts: readonly string[]): Promise<Outcome<Plan>> {
  const sizes = await Promise.all(extracts.map(sizeOf));
  const isLarge = sizes.reduce((sum, bytes) => sum + bytes, 0) > LARGE_BYTES;
  if (!isLarge) {
    const { tasks } = await import('./plan-tasks.ts');
    return tasks.readPlan(ask);
  }
  const pool = new WorkerPool<typeof tasks>({
    tasks: new URL('./plan-tasks.ts', import.meta.url),
    size: 1,
    maxWaiting: 1,
    maxHeapMb: WORKER_HEAP_MB,
  });
  try {
    return await pool.run('readPlan', ask, { timeoutMs: TIMEOUT_MS });
  } finally {
    await pool.close();
  }
}

/** Bytes of a file; none where it cannot be told: the reader says then what is wrong with it. */
async function sizeOf(path: string): Promise<number> {
  try {
    return (await stat(path)).size;
  } catch {
    return 0;
  }
}
