import { Worker } from 'node:worker_threads';
import { InputProblem, type Problem } from '../../../../core/input/problem.ts';
import type { Job, JobResult, JobSettings } from './jobs.ts';
import type { TakeResult, Workers } from './workers.ts';

/** What a worker sends back for each job, in the order that it got them. */
export type WorkerReply =
  | { ok: true; result: JobResult }
  | { ok: false; problem: Problem }
  | { ok: false; fault: string };

/** Jobs that wait at each worker while it does one, so that it never idles. */
const JOBS_AT_A_WORKER = 3;

/** Young generation of a worker's heap: small, for memory's sake, since little outlives a block. */
const YOUNG_GENERATION_MB = 2;

interface Waiting {
  settle: (reply: WorkerReply) => void;
  fail: (error: unknown) => void;
}

class WorkerThread {
  readonly worker: Worker;
  #waiting: Waiting[] = [];
  #failure: { reason: unknown } | null = null;

  constructor(settings: JobSettings) {
    this.worker = new Worker(new URL('./worker.mjs', import.meta.url), {
      workerData: settings,
      // Not the loaders of the thread that starts it: worker.mjs brings its own.
      execArgv: [],
      resourceLimits: { maxYoungGenerationSizeMb: YOUNG_GENERATION_MB },
    });
    this.worker.on('message', (reply: WorkerReply) => this.#waiting.shift()?.settle(reply));
    this.worker.on('error', (error) => this.fail(error));
    this.worker.on('exit', () => this.fail(new Error('a reading thread ended early')));
  }

  /** Nothing more comes from this worker. */
  fail(error: unknown): void {
    this.#failure ??= { reason: error };
    for (const waiting of this.#waiting.splice(0)) waiting.fail(error);
  }

  do(job: Job): Promise<WorkerReply> {
    if (this.#failure !== null) return Promise.reject(this.#failure.reason);
    return new Promise((settle, fail) => {
      this.#waiting.push({ settle, fail });
      this.worker.postMessage(job);
    });
  }
}

/** Does the jobs in worker threads, a few at a time. */
export class WorkerThreads implements Workers {
  readonly #threads: WorkerThread[];
  readonly #signal: AbortSignal | undefined;

  constructor(settings: JobSettings, threads: number, signal?: AbortSignal) {
    this.#threads = Array.from({ length: threads }, () => new WorkerThread(settings));
    this.#signal = signal;
  }

  async run(jobs: Iterable<Job>, take: TakeResult): Promise<void> {
    this.#signal?.throwIfAborted();
    const queue = jobs[Symbol.iterator]();
    const early = new Map<number, { result: JobResult; job: Job }>();
    let jobsStarted = 0;
    let resultsTaken = 0;
    let isStopped = false;

    const lane = async (thread: WorkerThread): Promise<void> => {
      while (!isStopped) {
        const next = queue.next();
        if (next.done === true) return;
        const job = next.value;
        const number = jobsStarted++;
        const reply = await thread.do(job);
        if (!reply.ok) throw 'problem' in reply ? new InputProblem(reply.problem) : new Error(reply.fault);
        early.set(number, { result: reply.result, job });
        for (let ready = early.get(resultsTaken); ready !== undefined; ready = early.get(resultsTaken)) {
          this.#signal?.throwIfAborted();
          early.delete(resultsTaken);
          resultsTaken += 1;
          take(ready.result, ready.job);
        }
      }
    };

    const abort = () => {
      for (const thread of this.#threads) thread.fail(this.#signal?.reason);
    };
    this.#signal?.addEventListener('abort', abort);
    try {
      await Promise.all(
        this.#threads.flatMap((thread) => Array.from({ length: JOBS_AT_A_WORKER }, () => lane(thread))),
      );
    } finally {
      isStopped = true;
      this.#signal?.removeEventListener('abort', abort);
    }
  }

  async close(): Promise<void> {
    await Promise.all(this.#threads.map((thread) => thread.worker.terminate()));
  }
}
