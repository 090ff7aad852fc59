import { randomUUID } from 'node:crypto';
import type { RigsAndTrip } from '../../app/compare/compare.ts';
import type { RigAndTrip } from '../../app/input/plan-input.ts';
import { isForReaders } from '../../app/take-along/export-file.ts';
import type { KeptResults } from '../../contract/kept.ts';
import { readDemoPlan } from '../../io/demo-files.ts';
import { DEMO_ID, type Store } from '../../store/library/store.ts';
import type { StoredTrip } from '../../store/port/port.ts';
import { type Language, language } from '../../words/parts/language.ts';
import type { tasks as carryTasks, ExportAsk } from '../../work/carry-tasks.ts';
import { JobAborted } from '../../work/job.ts';
import { WorkerPool } from '../../work/pool.ts';
import { PLAN_LESS } from '../../work/refusals.ts';
import { speaking } from '../../work/speaking.ts';
import type { LearnAsk, LoadAsk, PlanTexts, tasks } from '../../work/tasks.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';
import type { Limits } from './limits.ts';
import { PlansMade } from './plans-made.ts';
import { type ReadyTrip, TripLoader } from './trip-loader.ts';

type Work = typeof tasks;
type CarryWork = typeof carryTasks;

/** What a carry plan is asked for. */
export interface PlanRequest extends RigAndTrip {
  extras: boolean;
  /** Under this a good plan may be asked for meanwhile; null where nobody will. */
  name: string | null;
}

/** A carry plan as a file to take along. */
export type FileRequest = RigAndTrip & Pick<ExportAsk, 'format' | 'paper' | 'units'>;

export interface ServiceOptions {
  limits: Limits;
  today: () => string;
  onFault: (text: string) => void;
  store: Store;
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
  readonly #onFault: (text: string) => void;
  readonly #reading: WorkerPool<Work>;
  readonly #analysing: WorkerPool<Work>;
  /**
   * Solving blocks its worker, so planning has one of its own, and another that stands by where the first is at work that
   * was called off. It starts with the demo's analysis, which every server makes first, or with the first plan.
   */
  readonly #planning: () => WorkerPool<CarryWork>;
  #planningPool: WorkerPool<CarryWork> | null = null;
  /** Of plans that are being made under a name. */
  readonly #plansSoFar = new Map<string, Uint8Array>();
  readonly #plansMade: PlansMade;
  readonly #store: Store;
  readonly loader: TripLoader;
  /** What the last analysis of each trip came to, for a write of what was analysed that comes after it. */
  readonly #analysed = new Map<string, Analysed>();
  #closed = false;
  #warmLater: NodeJS.Timeout | undefined;
  readonly #demoReplies = new Map<Language, { day: string; bytes: Promise<Uint8Array> }>();

  constructor({ limits, today, onFault, store }: ServiceOptions) {
    this.#limits = limits;
    this.#plansMade = new PlansMade((limits.planSeconds * 1000) / 2);
    this.#today = today;
    this.#onFault = onFault;
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
    this.#store = store;
    this.loader = new TripLoader({ reading: this.#reading, store, limits });
  }

  /** Rig and trip of what was uploaded, read where it holds up nobody. */
  async readPlan({ rig, trip }: PlanTexts, signal: AbortSignal): Promise<RigAndTrip> {
    const options = { timeoutMs: this.#limits.analyseMs, signal };
    return valueOrThrow(await this.#analysing.run('readPlan', { rig, trip }, options));
  }

  /** Reads what was uploaded, keeps it and analyses it. */
  async analyseUpload(
    { route, extracts }: Pick<LoadAsk, 'route' | 'extracts'>,
    plan: RigAndTrip,
    signal: AbortSignal,
  ): Promise<Uint8Array> {
    const ask = { route, extracts, notice: null };
    const packed = await this.loader.read(ask, signal);
    const id = randomUUID();
    const bytes = await this.#analyse(id, { key: id, packed, kept: null }, plan, signal);
    if (signal.aborted) throw new JobAborted();
    this.loader.remember(id, packed);
    return bytes;
  }

  /** Analyses a kept trip again; `not-found` when it is gone. */
  async analyseAgain(id: string, plan: RigAndTrip, signal: AbortSignal): Promise<Uint8Array> {
    return this.#analyse(id, await this.loader.ready(id), plan, signal);
  }

  /** Compares rigs on a kept trip, as JSON bytes of a Comparison; `not-found` when it is gone. */
  async compare(id: string, { rigs, trip }: RigsAndTrip, signal: AbortSignal): Promise<Uint8Array> {
    const { key, packed } = await this.loader.ready(id);
    const ask = { id, key, packed, rigs, trip, today: this.#today() };
    return valueOrThrow(
      await this.#analysing.run('compare', ask, { timeoutMs: this.#limits.analyseMs, signal }),
    );
  }

  /** Plans what to carry on a kept trip, as JSON bytes of a PlanReply; `not-found` when it is gone. */
  async plan(id: string, request: PlanRequest, signal: AbortSignal): Promise<Uint8Array> {
    const { rig, trip, extras, name } = request;
    const { key, packed } = await this.loader.ready(id);
    const seconds = this.#limits.planSeconds;
    const ask = { key, packed, rig, trip, today: this.#today(), seconds, extras, soFar: name !== null };
    const onTold = (told: unknown) => {
      if (name !== null && told instanceof Uint8Array) this.#plansSoFar.set(name, told);
    };
    try {
      const options = { timeoutMs: this.#limits.analyseMs, signal, onTold };
      return await this.#plansMade.replyTo(
        { key, rig, trip, extras, today: ask.today, language: language() },
        async () => valueOrThrow(await this.#planning().run('planReply', ask, options)),
      );
    } finally {
      if (name !== null) this.#plansSoFar.delete(name);
    }
  }

  /** The carry plan of a kept trip as a file to take along, or the sheet to print; `not-found` when the trip is gone. */
  async exportFile(id: string, request: FileRequest, signal: AbortSignal): Promise<Uint8Array> {
    const { key, packed } = await this.loader.ready(id);
    const seconds = this.#limits.planSeconds;
    const ask = { ...request, key, packed, today: this.#today(), seconds, extras: true };
    const options = { timeoutMs: this.#limits.analyseMs, signal };
    const make = () => this.#planning().run('exportFile', ask, options);
    // Files in open formats are read by programs: English and metric, whoever asked.
    return valueOrThrow(await (isForReaders(request.format) ? make() : speaking('en', make)));
  }

  /** A good plan, while the best is still searched for under that name, as JSON bytes of a PlanReply; null while there is none. */
  planSoFar(name: string): Uint8Array | null {
    return this.#plansSoFar.get(name) ?? null;
  }

  /** Learns from a log, as JSON bytes of a LogResult. */
  async learn(ask: LearnAsk, signal: AbortSignal): Promise<Uint8Array> {
    return valueOrThrow(
      await this.#analysing.run('learn', ask, { timeoutMs: this.#limits.analyseMs, signal }),
    );
  }

  /** The demo with its own rig and trip, reckoned once a day. */
  async demo(): Promise<Uint8Array> {
    this.#warmLater?.refresh();
    const day = this.#today();
    const known = this.#demoReplies.get(language());
    if (known?.day === day) return known.bytes;
    const bytes = this.#analyseDemo();
    this.#demoReplies.set(language(), { day, bytes });
    // A failure is told to whoever asked, and tried again for the next.
    const asked = language();
    bytes.catch(() => this.#demoReplies.delete(asked));
    return bytes;
  }

  /** Jobs of each kind at work or waiting, and trips kept for re-analysis. */
  get load(): { reading: number; analysing: number; planning: number; kept: number } {
    return {
      reading: this.#reading.jobs,
      analysing: this.#analysing.jobs,
      planning: this.#planningPool?.jobs ?? 0,
      kept: this.loader.count,
    };
  }

  async close(): Promise<void> {
    this.#closed = true;
    clearTimeout(this.#warmLater);
    await Promise.all([this.#reading.close(), this.#analysing.close(), this.#planningPool?.close()]);
  }

  async #analyseDemo(): Promise<Uint8Array> {
    const plan = valueOrThrow(await readDemoPlan());
    const packed = await this.loader.demo();
    const bytes = await this.#analyse(
      DEMO_ID,
      { key: DEMO_ID, packed, kept: this.#store.trip(DEMO_ID) },
      plan,
      undefined,
    );
    this.#warmLater = setTimeout(() => this.#warmPlanning(packed, plan), WARM_AFTER_MS).unref();
    return bytes;
  }

  /** The first plans of a worker take many times as long as the later ones: it makes the demo's for nobody. */
  #warmPlanning(packed: SharedArrayBuffer, { rig, trip }: RigAndTrip): void {
    this.#warmLater = undefined;
    if (this.#closed) return;
    const ask = { key: DEMO_ID, packed, rig, trip, today: this.#today(), seconds: this.#limits.planSeconds };
    const step = (extras: boolean) => ({ name: 'planReply', ask: { ...ask, extras } });
    this.#planning().warm([...Array<boolean>(PLAIN_PLANS).fill(false), true].map(step));
  }

  async #analyse(
    id: string,
    { key, packed, kept }: ReadyTrip,
    { rig, trip }: RigAndTrip,
    signal: AbortSignal | undefined,
  ): Promise<Uint8Array> {
    this.#warmLater?.refresh();
    const ask = { id, key, packed, rig, trip, today: this.#today() };
    const { reply, results } = valueOrThrow(
      await this.#analysing.run('analyseKept', ask, { timeoutMs: this.#limits.analyseMs, signal }),
    );
    if (kept !== null) this.#note(kept, { rig, trip, results });
    return reply;
  }

  #note(kept: StoredTrip, { rig, trip, results }: RigAndTrip & { results: KeptResults }): void {
    const analysed = { rig, trip, results, mapsRevision: kept.mapsRevision };
    this.#analysed.delete(kept.id);
    this.#analysed.set(kept.id, analysed);
    const [oldest] = this.#analysed.keys();
    if (this.#analysed.size > this.#limits.keptTrips && oldest !== undefined) this.#analysed.delete(oldest);
    this.noteResults(kept.id);
  }

  /** Keeps what the last analysis of a trip came to, if that was of what is kept of it now. */
  noteResults(id: string): void {
    const analysed = this.#analysed.get(id);
    if (analysed === undefined) return;
    try {
      this.#store.noteResults(id, analysed, analysed.results);
    } catch (error) {
      // An answer stands also where it cannot be kept: the disk is full.
      this.#onFault(error instanceof Error ? error.message : String(error));
    }
  }
}

/** An analysis of a kept trip. */
interface Analysed extends RigAndTrip {
  mapsRevision: number;
  results: KeptResults;
}
