import { Worker } from 'node:worker_threads';
import { fail, giveWord, isGivenUp, type Job, JobAborted, jobOf } from './job.ts';
import type { DoneMessage, TaskTable, ToldMessage } from './protocol.ts';
import { busy, READ_LESS, tooLarge, tooSlow, workerDied } from './refusals.ts';

export interface PoolOptions {
  /** The module that exports `tasks`, as a file URL. */
  tasks: URL;
  /** Jobs at work at a time. */
  size: number;
  /** Workers that stand by beyond those, ready to take over where one is at a job that was given up; none when left out. */
  spares?: number;
  /** Jobs that may wait; one more is refused with `too-many-requests`. */
  maxWaiting: number;
  /** Heap of one worker, MB; a job that needs more ends in `too-large`. */
  maxHeapMb: number;
  /** What to do where a job takes too long or too much; a smaller extract when left out. */
  remedy?: string;
  /** Told of crashes that no job's rejection tells of, for the log. */
  onFault?: (text: string) => void;
}

export interface RunOptions {
  /** From the job's coming to its answer, waiting included; over it `too-slow`. */
  timeoutMs: number;
  signal?: AbortSignal | undefined;
  /** Hears what the task tells before it is done. */
  onTold?: ((told: unknown) => void) | undefined;
}

/** A job that is done for the sake of the worker alone: afterwards it is quicker. */
export interface WarmStep {
  name: string;
  ask: unknown;
}

/** A worker and what it is at. */
interface Hand {
  worker: Worker;
  job: Job | null;
  /** Warm steps done. */
  warmed: number;
  /** The last job that was asked of it: what it holds from then may be of use again. */
  lastJob: number;
  /** Ends the worker when it does not come free after an abort. */
  grace: NodeJS.Timeout | null;
}

/** How long a worker may take to notice that its job was given up before it is ended and replaced. */
const GRACE_MS = 1500;
const ENTRY = new URL('./worker-entry.mjs', import.meta.url);

/**
 * A fixed number of worker threads and a bounded queue. A job that is given up, runs too long or breaks its worker
 * costs that worker only: it is ended and another one started. Workers that have nothing to do are warmed.
 */
export class WorkerPool<T extends TaskTable> {
  readonly #options: PoolOptions;
  readonly #hands: Hand[] = [];
  #waiting: Job[] = [];
  #steps: readonly WarmStep[] = [];
  #jobs = 0;
  #closed = false;

  constructor(options: PoolOptions) {
    this.#options = options;
    for (let i = 0; i < options.size; i += 1) this.#hire();
  }

  /** Runs a task. Rejects with InputProblem (busy, too slow, too large), JobAborted, or Error for a fault. */
  run<N extends keyof T & string>(
    name: N,
    ask: Parameters<T[N]>[0],
    { timeoutMs, signal, onTold }: RunOptions,
  ): Promise<Awaited<ReturnType<T[N]>>> {
    return new Promise((resolve, reject) => {
      if (this.#closed) return reject(new Error('the pool is closed'));
      if (signal?.aborted === true) return reject(new JobAborted());
      if (!this.#hasRoom() && this.#waiting.length >= this.#options.maxWaiting)
        return reject(busy(this.#waiting.length));
      const release = () => {
        clearTimeout(timer);
        signal?.removeEventListener('abort', onAbort);
      };
      const job: Job = {
        ...this.#jobOf(name, ask),
        onTold,
        resolve: (give) => {
          release();
          resolve(give as Awaited<ReturnType<T[N]>>);
        },
        reject: (error) => {
          release();
          reject(error);
        },
      };
      const onAbort = () => this.#giveUp(job, new JobAborted(), GRACE_MS);
      const timer = setTimeout(() => this.#giveUp(job, tooSlow(timeoutMs, this.#remedy), 0), timeoutMs);
      signal?.addEventListener('abort', onAbort, { once: true });
      this.#waiting.push(job);
      this.#handOut();
    });
  }

  /**
   * Has every worker do these steps whenever it has nothing to do, one worker at a time; also those that are started
   * later. A step is left for any job that comes. One that fails is told to onFault and ends all warming.
   */
  warm(steps: readonly WarmStep[]): void {
    if (this.#closed) return;
    this.#steps = steps;
    this.#handOut();
  }

  /** Jobs at work and waiting; a job that was given up counts until its worker has come free. */
  get jobs(): number {
    return this.#waiting.length + this.#hands.filter(({ job }) => job !== null && !job.warming).length;
  }

  /** Workers that stand ready with every warm step done. */
  get warmWorkers(): number {
    return this.#hands.filter(({ job, warmed }) => job === null && warmed >= this.#steps.length).length;
  }

  /** Ends all workers; what runs or waits is rejected. */
  async close(): Promise<void> {
    this.#closed = true;
    const error = new Error('the pool is closed');
    for (const job of this.#waiting) fail(job, error);
    this.#waiting = [];
    await Promise.all(
      this.#hands.map((hand) => {
        if (hand.grace !== null) clearTimeout(hand.grace);
        if (hand.job !== null) fail(hand.job, error);
        return hand.worker.terminate();
      }),
    );
  }

  #hire(): void {
    const worker = new Worker(ENTRY, {
      workerData: { tasks: this.#options.tasks.href },
      // Without the parent's loaders: the entry registers its own.
      execArgv: [],
      resourceLimits: { maxOldGenerationSizeMb: this.#options.maxHeapMb },
    });
    const hand: Hand = { worker, job: null, warmed: 0, lastJob: 0, grace: null };
    this.#hands.push(hand);
    worker.on('message', (message: 'ready' | DoneMessage | ToldMessage) => {
      if (message === 'ready') return;
      if ('told' in message) this.#told(hand, message);
      else this.#done(hand, message);
    });
    worker.on('error', (error: Error) => this.#crashed(hand, error));
    worker.on('exit', () => this.#replace(hand));
    worker.unref();
  }

  #jobOf(name: string, ask: unknown): Job {
    this.#jobs += 1;
    return jobOf(this.#jobs, name, ask);
  }

  /** Jobs at work that somebody waits for. */
  get #wanted(): number {
    return this.#hands.filter(({ job }) => job !== null && !job.settled).length;
  }

  get #remedy(): string {
    return this.#options.remedy ?? READ_LESS;
  }

  /** Whether a job that comes now is taken up at once, or as soon as a warm step is left. */
  #hasRoom(): boolean {
    return this.#wanted < this.#options.size && this.#hands.some(({ job }) => job === null || job.warming);
  }

  #handOut(): void {
    if (this.#closed) return;
    while (this.#wanted < this.#options.size) {
      const [job] = this.#waiting;
      if (job === undefined) break;
      const hand = this.#freeHand();
      if (hand === undefined) {
        for (const { job: step } of this.#hands) if (step?.warming === true) giveWord(step);
        return;
      }
      this.#waiting.shift();
      hand.lastJob = job.number;
      // A worker at work keeps the process alive; an idle one does not.
      hand.worker.ref();
      this.#start(hand, job);
    }
    this.#warmOne();
  }

  /** One that has nothing to do: the warmest, of these the one asked last. */
  #freeHand(): Hand | undefined {
    return this.#hands
      .filter(({ job }) => job === null)
      .sort((a, b) => b.warmed - a.warmed || b.lastJob - a.lastJob)
      .at(0);
  }

  #start(hand: Hand, job: Job): void {
    hand.job = job;
    const { number, name, ask, language, flag } = job;
    hand.worker.postMessage({ job: number, name, ask, language, flag });
  }

  #told({ job }: Hand, message: ToldMessage): void {
    if (job?.number === message.job && !job.settled) job.onTold?.(message.told);
  }

  #done(hand: Hand, message: DoneMessage): void {
    const { job } = hand;
    if (job === null || job.number !== message.job) return;
    hand.job = null;
    hand.worker.unref();
    if (hand.grace !== null) clearTimeout(hand.grace);
    hand.grace = null;
    if (job.warming) {
      if ('give' in message) hand.warmed += 1;
      // A step that was left for a job is done again; one that fails would fail each time.
      else if (!isGivenUp(job)) {
        this.#steps = [];
        this.#options.onFault?.(message.fault);
      }
    } else if ('fault' in message) {
      fail(job, new Error(message.fault));
    } else if (!job.settled) {
      job.settled = true;
      job.resolve(message.give);
    }
    this.#handOut();
  }

  /** While nobody waits for anything: the next warm step of one worker, or one more to stand by. */
  #warmOne(): void {
    if (this.#steps.length === 0 || this.#waiting.length > 0) return;
    if (this.#hands.some(({ job }) => job !== null && (job.warming || !job.settled))) return;
    for (const hand of this.#hands) {
      const step = hand.job === null ? this.#steps[hand.warmed] : undefined;
      if (step === undefined) continue;
      this.#start(hand, { ...this.#jobOf(step.name, step.ask), warming: true, settled: true });
      return;
    }
    if (this.#hands.length >= this.#options.size + (this.#options.spares ?? 0)) return;
    this.#hire();
    this.#warmOne();
  }

  /** Rejects a job; a worker that is at it gets a while to come free, then is ended. */
  #giveUp(job: Job, error: Error, graceMs: number): void {
    fail(job, error);
    this.#waiting = this.#waiting.filter((waiting) => waiting !== job);
    const hand = this.#hands.find((one) => one.job === job);
    if (hand === undefined) return;
    giveWord(job);
    hand.worker.postMessage({ abort: job.number });
    // Another worker may stand by.
    this.#handOut();
    if (graceMs === 0) void hand.worker.terminate();
    else hand.grace = setTimeout(() => void hand.worker.terminate(), graceMs);
  }

  #crashed(hand: Hand, error: Error): void {
    if (hand.job?.warming === true) this.#steps = [];
    if (hand.job === null || hand.job.settled) {
      this.#options.onFault?.(error.stack ?? error.message);
      return;
    }
    const outOfMemory = (error as NodeJS.ErrnoException).code === 'ERR_WORKER_OUT_OF_MEMORY';
    fail(hand.job, outOfMemory ? tooLarge(this.#options.maxHeapMb, this.#remedy) : error);
  }

  #replace(hand: Hand): void {
    const place = this.#hands.indexOf(hand);
    if (place < 0 || this.#closed) return;
    this.#hands.splice(place, 1);
    if (hand.grace !== null) clearTimeout(hand.grace);
    if (hand.job !== null && !hand.job.settled) {
      this.#options.onFault?.(`a worker ended in the middle of ${hand.job.name}`);
      fail(hand.job, workerDied());
    }
    if (this.#hands.length < this.#options.size) this.#hire();
    this.#handOut();
  }
}
