import { setImmediate as nextTurn } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { InputProblem, type Problem } from '../../../../core/input/problem.ts';
import { type Job, JobDoer, type JobResult, type JobSettings } from './jobs.ts';

/** Does jobs and hands each result on in the order of the jobs, wherever it was done. */
export interface Crew {
  /** @throws InputProblem of a job; the signal's reason when aborted. */
  run(jobs: Iterable<Job>, take: (result: JobResult, job: Job) => void): Promise<void>;
  close(): Promise<void>;
}

/** How long jobs run in this thread before others have a turn, milliseconds. Ours. */
const TURN_MS = 20;

/** Does the jobs in this thread: for small files, where starting threads would take longer. */
export class LoneCrew implements Crew {
  readonly #doer: JobDoer;
  readonly #signal: AbortSignal | undefined;

  constructor(settings: JobSettings, signal?: AbortSignal) {
    this.#doer = new JobDoer(settings);
    this.#signal = signal;
  }

  async run(jobs: Iterable<Job>, take: (result: JobResult, job: Job) => void): Promise<void> {
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

class Hand {
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
export class ThreadCrew implements Crew {
  readonly #hands: Hand[];
  readonly #signal: AbortSignal | undefined;

  constructor(settings: JobSettings, threads: number, signal?: AbortSignal) {
    this.#hands = Array.from({ length: threads }, () => new Hand(settings));
    this.#signal = signal;
  }

  async run(jobs: Iterable<Job>, take: (result: JobResult, job: Job) => void): Promise<void> {
    this.#signal?.throwIfAborted();
    const queue = jobs[Symbol.iterator]();
    const early = new Map<number, { result: JobResult; job: Job }>();
    let given = 0;
    let taken = 0;
    let stopped = false;

    const lane = async (hand: Hand): Promise<void> => {
      while (!stopped) {
        const next = queue.next();
        if (next.done === true) return;
        const job = next.value;
        const number = given++;
        const reply = await hand.do(job);
        if (!reply.ok) throw 'problem' in reply ? new InputProblem(reply.problem) : new Error(reply.fault);
        early.set(number, { result: reply.result, job });
        for (let ready = early.get(taken); ready !== undefined; ready = early.get(taken)) {
          this.#signal?.throwIfAborted();
          early.delete(taken);
          taken += 1;
          take(ready.result, ready.job);
        }
      }
    };

    const abort = () => {
      for (const hand of this.#hands) hand.fail(this.#signal?.reason);
    };
    this.#signal?.addEventListener('abort', abort);
    try {
      await Promise.all(
        this.#hands.flatMap((hand) => Array.from({ length: JOBS_AT_A_WORKER }, () => lane(hand))),
      );
    } finally {
      stopped = true;
      this.#signal?.removeEventListener('abort', abort);
    }
  }

  async close(): Promise<void> {
    await Promise.all(this.#hands.map((hand) => hand.worker.terminate()));
  }
}
