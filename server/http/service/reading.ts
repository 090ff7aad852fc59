import { randomUUID } from 'node:crypto';
import type { ExtractReading } from '../../contract/supplies/readings.ts';
import type { FetchState } from '../../io/overpass/fetch-corridor.ts';

/** A stage's rate is told once it has lasted so long, milliseconds. Ours. */
const RATE_AFTER_MS = 500;

type Stage = ExtractReading['stage'];

/** An extract on its way to be kept: told of by whoever works on it, looked at by whoever asks. */
export class Reading {
  readonly id = randomUUID();
  /** Aborts what works on it. */
  readonly control = new AbortController();
  /** Bytes read, and in all: written by the reading worker. */
  readonly progress = new SharedArrayBuffer(2 * Float64Array.BYTES_PER_ELEMENT);
  name: string;
  readonly #startedAt = new Date().toISOString();
  readonly #now: () => number;
  readonly #sentBytes: number | null;
  #stage: Stage;
  #stageAtMs: number;
  #objects: { done: number; total: number | null } = { done: 0, total: null };
  #asking: ExtractReading['asking'] = null;

  /** `sentBytes`: of the file that is sent, as far as its sender tells. */
  constructor(name: string, stage: Stage, sentBytes: number | null = null, now: () => number = Date.now) {
    this.name = name;
    this.#stage = stage;
    this.#sentBytes = sentBytes;
    this.#now = now;
    this.#stageAtMs = now();
  }

  set stage(stage: Stage) {
    if (stage === this.#stage) return;
    this.#stage = stage;
    this.#stageAtMs = this.#now();
    if (stage === 'reading') this.#bytes.fill(0);
  }

  /** So many bytes more of the file are here. */
  came(bytes: number): void {
    this.#bytes[0] = (this.#bytes[0] ?? 0) + bytes;
  }

  /** So many objects are written down. */
  wrote(done: number, total: number): void {
    this.stage = 'keeping';
    this.#objects = { done, total };
  }

  asked({ done, chunks, waiting }: FetchState): void {
    this.#asking = {
      done,
      requests: chunks,
      waiting:
        waiting === null
          ? null
          : {
              until: new Date(this.#now() + waiting.seconds * 1_000).toISOString(),
              why: waiting.why,
              detail: waiting.detail,
            },
    };
  }

  /** How it stands now. */
  told(): ExtractReading {
    const [done = 0, total = 0] = this.#bytes;
    const totalBytes = this.#stage === 'coming' ? this.#sentBytes : total === 0 ? null : total;
    const { done: objects, total: totalObjects } = this.#objects;
    const going = this.#going(done, totalBytes);
    return {
      id: this.id,
      name: this.name,
      startedAt: this.#startedAt,
      stage: this.#stage,
      doneBytes: done,
      totalBytes,
      objects,
      totalObjects,
      ...going,
      asking: this.#asking,
    };
  }

  get #bytes(): Float64Array {
    return new Float64Array(this.progress);
  }

  #going(doneBytes: number, totalBytes: number | null): Pick<ExtractReading, 'perSecond' | 'leftSeconds'> {
    const [done, total] =
      this.#stage === 'keeping'
        ? [this.#objects.done, this.#objects.total]
        : this.#stage === 'asking'
          ? [this.#asking?.done ?? 0, this.#asking?.requests ?? null]
          : [doneBytes, totalBytes];
    const ms = this.#now() - this.#stageAtMs;
    if (ms < RATE_AFTER_MS || done === 0) return { perSecond: null, leftSeconds: null };
    const perSecond = (1_000 * done) / ms;
    return { perSecond, leftSeconds: total === null ? null : Math.max(0, total - done) / perSecond };
  }
}
