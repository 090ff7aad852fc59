import { randomUUID } from 'node:crypto';
import type { RigsAndTrip } from '../../app/compare.ts';
import type { RigAndTrip } from '../../app/input/plan-input.ts';
import { InputProblem } from '../../core/input/problem.ts';
import type { tasks as carryTasks } from '../../work/carry-tasks.ts';
import { JobAborted } from '../../work/job.ts';
import { WorkerPool } from '../../work/pool.ts';
import { PLAN_LESS } from '../../work/refusals.ts';
import type { LearnAsk, LoadAsk, tasks } from '../../work/tasks.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';
import { DEMO_EXTRACT, DEMO_ID, DEMO_NOTICE, DEMO_ROUTE, readDemoPlan } from './demo.ts';
import type { Limits } from './limits.ts';
import { TripStore } from './trip-store.ts';

type Work = typeof tasks;
type CarryWork = typeof carryTasks;

/** What a carry plan is asked for. */
export interface PlanRequest extends RigAndTrip {
  extras: boolean;
}

export interface ServiceOptions {
  limits: Limits;
  today: () => string;
  onFault: (text: string) => void;
}

/**
 * Planning workers are warmed when nothing was analysed, nor the demo asked for, for so long (ours): a page that was just opened is drawn
 * first, perhaps on this very machine.
 */
const WARM_AFTER_MS = 3_000;
/** After so many plans of the demo another one is hardly quicker (measured). */
const PLAIN_PLANS = 4;

const TASKS = new URL('../../work/tasks.ts', import.meta.url);
const CARRY_TASKS = new URL('../../work/carry-tasks.ts', import.meta.url);

/**
 * Loads and analyses trips in workers. Reading has a worker of its own, so that a large upload holds up no re-analysis.
 * Replies are JSON bytes of an AnalysisReply.
 */
export class AnalysisService {
  readonly #limits: Limits;
  readonly #today: () => string;
  readonly #reading: WorkerPool<Work>;
  readonly #analysing: WorkerPool<Work>;
  /**
   * Solving blocks its worker, so planning has one of its own, and another that stands by where the first is at work that
   * was called off. It starts with the demo's analysis, which every server makes first, or with the first plan.
   */
  readonly #planning: () => WorkerPool<CarryWork>;
  #planningPool: WorkerPool<CarryWork> | null = null;
  readonly #store: TripStore;
  #demoTrip: Promise<SharedArrayBuffer> | null = null;
  #closed = false;
  #warmLater: NodeJS.Timeout | undefined;
  #demoReply: { day: string; bytes: Promise<Uint8Array> } | null = null;

  constructor({ limits, today, onFault }: ServiceOptions) {
    this.#limits = limits;
    this.#today = today;
    const shared = {
      tasks: TASKS,
      size: 1,
      maxWaiting: limits.waitingJobs,
      maxHeapMb: limits.workerHeapMb,
      onFault,
    };
    this.#reading = new WorkerPool<Work>(shared);
    this.#analysing = new WorkerPool<Work>(shared);
    this.#planning = () => {
      this.#planningPool ??= new WorkerPool<CarryWork>({
        ...shared,
        tasks: CARRY_TASKS,
        spares: 1,
        remedy: PLAN_LESS,
      });
      return this.#planningPool;
    };
    this.#store = new TripStore(limits.keptTrips, limits.keptBytes);
  }

  /** Reads what was uploaded, keeps it and analyses it. */
  async analyseUpload(
    { route, extracts }: Pick<LoadAsk, 'route' | 'extracts'>,
    plan: RigAndTrip,
    signal: AbortSignal,
  ): Promise<Uint8Array> {
    const ask = { route, extracts, notice: null };
    const packed = valueOrThrow(
      await this.#reading.run('load', ask, { timeoutMs: this.#limits.readMs, signal }),
    );
    const id = randomUUID();
    const bytes = await this.#analyse(id, packed, plan, signal);
    if (signal.aborted) throw new JobAborted();
    this.#store.put(id, packed);
    return bytes;
  }

  /** Analyses a kept trip again; `not-found` when it is gone. */
  async analyseAgain(id: string, plan: RigAndTrip, signal: AbortSignal): Promise<Uint8Array> {
    return this.#analyse(id, await this.#kept(id), plan, signal);
  }

  /** Compares rigs on a kept trip, as JSON bytes of a Comparison; `not-found` when it is gone. */
  async compare(id: string, { rigs, trip }: RigsAndTrip, signal: AbortSignal): Promise<Uint8Array> {
    const ask = { id, packed: await this.#kept(id), rigs, trip, today: this.#today() };
    return valueOrThrow(
      await this.#analysing.run('compare', ask, { timeoutMs: this.#limits.analyseMs, signal }),
    );
  }

  /** Plans what to carry on a kept trip, as JSON bytes of a PlanReply; `not-found` when it is gone. */
  async plan(id: string, { rig, trip, extras }: PlanRequest, signal: AbortSignal): Promise<Uint8Array> {
    const packed = await this.#kept(id);
    const seconds = this.#limits.planSeconds;
    const ask = { id, packed, rig, trip, today: this.#today(), seconds, extras };
    return valueOrThrow(
      await this.#planning().run('planReply', ask, { timeoutMs: this.#limits.analyseMs, signal }),
    );
  }

  /** Learns from a log, as JSON bytes of a LogResult. */
  async learn(ask: LearnAsk, signal: AbortSignal): Promise<Uint8Array> {
    return valueOrThrow(
      await this.#analysing.run('learn', ask, { timeoutMs: this.#limits.analyseMs, signal }),
    );
  }

  async #kept(id: string): Promise<SharedArrayBuffer> {
    const packed = id === DEMO_ID ? await this.#loadDemo() : this.#store.get(id);
    if (packed !== null) return packed;
    throw new InputProblem({
      code: 'not-found',
      came: 'an analysis that is no longer kept',
      expected: 'one that was sent since the server started and was used not long ago',
      remedy: 'Send the files again',
    });
  }

  /** The demo with its own rig and trip, reckoned once a day. */
  async demo(): Promise<Uint8Array> {
    this.#warmLater?.refresh();
    const day = this.#today();
    if (this.#demoReply?.day !== day) {
      const bytes = this.#analyseDemo();
      this.#demoReply = { day, bytes };
      // A failure is told to whoever asked, and tried again for the next.
      bytes.catch(() => {
        this.#demoReply = null;
      });
    }
    return this.#demoReply.bytes;
  }

  /** Jobs of each kind at work or waiting, and trips kept for re-analysis. */
  get load(): { reading: number; analysing: number; planning: number; kept: number } {
    return {
      reading: this.#reading.jobs,
      analysing: this.#analysing.jobs,
      planning: this.#planningPool?.jobs ?? 0,
      kept: this.#store.count,
    };
  }

  async close(): Promise<void> {
    this.#closed = true;
    clearTimeout(this.#warmLater);
    await Promise.all([this.#reading.close(), this.#analysing.close(), this.#planningPool?.close()]);
  }

  async #analyseDemo(): Promise<Uint8Array> {
    const plan = valueOrThrow(await readDemoPlan());
    const packed = await this.#loadDemo();
    const bytes = await this.#analyse(DEMO_ID, packed, plan, undefined);
    this.#warmLater = setTimeout(() => this.#warmPlanning(packed, plan), WARM_AFTER_MS).unref();
    return bytes;
  }

  /** The first plans of a worker take many times as long as the later ones: it makes the demo's for nobody. */
  #warmPlanning(packed: SharedArrayBuffer, { rig, trip }: RigAndTrip): void {
    this.#warmLater = undefined;
    if (this.#closed) return;
    const ask = { id: DEMO_ID, packed, rig, trip, today: this.#today(), seconds: this.#limits.planSeconds };
    const step = (extras: boolean) => ({ name: 'planReply', ask: { ...ask, extras } });
    this.#planning().warm([...Array<boolean>(PLAIN_PLANS).fill(false), true].map(step));
  }

  #loadDemo(): Promise<SharedArrayBuffer> {
    this.#demoTrip ??= this.#reading
      .run(
        'load',
        { route: DEMO_ROUTE, extracts: [DEMO_EXTRACT], notice: DEMO_NOTICE },
        { timeoutMs: this.#limits.readMs },
      )
      .then(valueOrThrow)
      .catch((error: unknown) => {
        this.#demoTrip = null;
        throw error;
      });
    return this.#demoTrip;
  }

  async #analyse(
    id: string,
    packed: SharedArrayBuffer,
    { rig, trip }: RigAndTrip,
    signal: AbortSignal | undefined,
  ): Promise<Uint8Array> {
    this.#warmLater?.refresh();
    const ask = { id, packed, rig, trip, today: this.#today() };
    return valueOrThrow(
      await this.#analysing.run('analyse', ask, { timeoutMs: this.#limits.analyseMs, signal }),
    );
  }
}
