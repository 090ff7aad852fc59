import { setImmediate as nextTurn } from 'node:timers/promises';
import { type Job, JobDoer, type JobSettings } from './jobs.ts';
import type { TakeResult, Workers } from './workers.ts';

/** How long jobs run in this thread before others have a turn, milliseconds. Ours. */
const TURN_MS = 20;

/** Does the jobs in this thread: for small files, where starting threads would take longer. */
export class OwnThread implements Workers {
  readonly #doer: JobDoer;
  readonly #signal: AbortSignal | undefined;

  constructor(settings: JobSettings, signal?: AbortSignal) {
    this.#doer = new JobDoer(settings);
    this.#signal = signal;
  }

  async run(jobs: Iterable<Job>, take: TakeResult): Promise<void> {
    let turnBegan = performance.now();
    for (const job of jobs) {
      this.#signal?.throwIfAborted();
      take(this.#doer.do(job), job);
      if (performance.now() - turnBegan > TURN_MS) {
        await nextTurn();
        turnBegan = performance.now();
      }
    }
  }

  async close(): Promise<void> {
    this.#doer.close();
  }
}
