import { Worker } from 'node:worker_threads';
import type { DoneMessage, TaskTable } from './protocol.ts';
import { busy, READ_LESS, tooLarge, tooSlow } from './refusals.ts';

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
}

/** A job was given up by whoever asked for it. */
export class JobAborted extends Error {
  constructor() {
    super('the job was given up');
    this.name = 'JobAborted';
  }
}

/** A job that is done for the sake of the worker alone: afterwards it is quicker. */
export interface WarmStep {
  name: string;
  ask: unknown;
}

interface Job {
  number: number;
  name: string;
  ask: unknown;
  /** Nobody waits for it: it only warms the worker. */
  warming: boolean;
  flag: SharedArrayBuffer;
  /** Nobody waits for it, or not any more. */
  settled: boolean;
  resolve: (give: unknown) => void;
  reject: (error: Error) => void;
}

interface Crew {
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
  readonly #crews: Crew[] = [];
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
    { timeoutMs, signal }: RunOptions,
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
        ...this.#job(name, ask),
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
    return this.#waiting.length + this.#crews.filter(({ job }) => job !== null && !job.warming).length;
  }

  /** Workers that stand ready with every warm step done. */
  get warmWorkers(): number {
    return this.#crews.filter(({ job, warmed }) => job === null && warmed >= this.#steps.length).length;
  }

  /** Ends all workers; what runs or waits is rejected. */
  async close(): Promise<void> {
    this.#closed = true;
    const error = new Error('the pool is closed');
    for (const job of this.#waiting) settle(job, error);
    this.#waiting = [];
    await Promise.all(
      this.#crews.map((crew) => {
        if (crew.grace !== null) clearTimeout(crew.grace);
        if (crew.job !== null) settle(crew.job, error);
        return crew.worker.terminate();
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
    const crew: Crew = { worker, job: null, warmed: 0, lastJob: 0, grace: null };
    this.#crews.push(crew);
    worker.on('message', (message: 'ready' | DoneMessage) => {
      if (message !== 'ready') this.#done(crew, message);
    });
    worker.on('error', (error: Error) => this.#crashed(crew, error));
    worker.on('exit', () => this.#replace(crew));
    worker.unref();
  }

  #job(name: string, ask: unknown): Job {
    this.#jobs += 1;
    return {
      number: this.#jobs,
      name,
      ask,
      warming: false,
      flag: new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT),
      settled: false,
      resolve: () => {},
      reject: () => {},
    };
  }

  /** Jobs at work that somebody waits for. */
  get #wanted(): number {
    return this.#crews.filter(({ job }) => job !== null && !job.settled).length;
  }

  get #remedy(): string {
    return this.#options.remedy ?? READ_LESS;
  }

  /** Whether a job that comes now is taken up at once, or as soon as a warm step is left. */
  #hasRoom(): boolean {
    return this.#wanted < this.#options.size && this.#crews.some(({ job }) => job === null || job.warming);
  }

  #handOut(): void {
    if (this.#closed) return;
    while (this.#waiting.length > 0 && this.#wanted < this.#options.size) {
      const [crew] = this.#crews
        .filter(({ job }) => job === null)
        .sort((a, b) => b.warmed - a.warmed || b.lastJob - a.lastJob);
      if (crew === undefined) {
        for (const { job } of this.#crews) if (job?.warming === true) giveWord(job);
        return;
      }
      const job = this.#waiting.shift()!;
      crew.lastJob = job.number;
      // A worker at work keeps the process alive; an idle one does not.
      crew.worker.ref();
      this.#start(crew, job);
    }
    this.#warmOne();
  }

  #start(crew: Crew, job: Job): void {
    crew.job = job;
    const { number, name, ask, flag } = job;
    crew.worker.postMessage({ job: number, name, ask, flag });
  }

  #done(crew: Crew, message: DoneMessage): void {
    const { job } = crew;
    if (job === null || job.number !== message.job) return;
    crew.job = null;
    crew.worker.unref();
    if (crew.grace !== null) clearTimeout(crew.grace);
    crew.grace = null;
    if (job.warming) {
      if ('give' in message) crew.warmed += 1;
      // A step that was left for a job is done again; one that fails would fail each time.
      else if (!isGivenUp(job)) {
        this.#steps = [];
        this.#options.onFault?.(message.fault);
      }
    } else if ('fault' in message) {
      settle(job, new Error(message.fault));
    } else if (!job.settled) {
      job.settled = true;
      job.resolve(message.give);
    }
    this.#handOut();
  }

  /** While nobody waits for anything: the next warm step of one worker, or one more to stand by. */
  #warmOne(): void {
    if (this.#steps.length === 0 || this.#waiting.length > 0) return;
    if (this.#crews.some(({ job }) => job !== null && (job.warming || !job.settled))) return;
    const cold = this.#crews.find(({ job, warmed }) => job === null && warmed < this.#steps.length);
    if (cold !== undefined) {
      const { name, ask } = this.#steps[cold.warmed]!;
      this.#start(cold, { ...this.#job(name, ask), warming: true, settled: true });
    } else if (this.#crews.length < this.#options.size + (this.#options.spares ?? 0)) {
      this.#hire();
      this.#warmOne();
    }
  }

  /** Rejects a job; a worker that is at it gets a while to come free, then is ended. */
  #giveUp(job: Job, error: Error, graceMs: number): void {
    settle(job, error);
    this.#waiting = this.#waiting.filter((waiting) => waiting !== job);
    const crew = this.#crews.find((one) => one.job === job);
    if (crew === undefined) return;
    giveWord(job);
    crew.worker.postMessage({ abort: job.number });
    // Another worker may stand by.
    this.#handOut();
    if (graceMs === 0) void crew.worker.terminate();
    else crew.grace = setTimeout(() => void crew.worker.terminate(), graceMs);
  }

  #crashed(crew: Crew, error: Error): void {
    if (crew.job?.warming === true) this.#steps = [];
    if (crew.job === null || crew.job.settled) {
      this.#options.onFault?.(error.stack ?? error.message);
      return;
    }
    const outOfMemory = (error as NodeJS.ErrnoException).code === 'ERR_WORKER_OUT_OF_MEMORY';
    settle(crew.job, outOfMemory ? tooLarge(this.#options.maxHeapMb, this.#remedy) : error);
  }

  #replace(crew: Crew): void {
    const place = this.#crews.indexOf(crew);
    if (place < 0 || this.#closed) return;
    this.#crews.splice(place, 1);
    if (crew.grace !== null) clearTimeout(crew.grace);
    if (crew.job !== null) settle(crew.job, new Error('the worker ended in the middle of a job'));
    if (this.#crews.length < this.#options.size) this.#hire();
    this.#handOut();
  }
}

/** Tells a task that blocks its thread that it is given up. */
function giveWord({ flag }: Job): void {
  Atomics.store(new Int32Array(flag), 0, 1);
}

const isGivenUp = ({ flag }: Job): boolean => Atomics.load(new Int32Array(flag), 0) === 1;

function settle(job: Job, error: Error): void {
  if (job.settled) return;
  job.settled = true;
  job.reject(error);
}
