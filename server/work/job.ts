import { type Language, language } from '../words/parts/language.ts';

/** Work that is asked of a pool. */
export interface Job {
  number: number;
  name: string;
  ask: unknown;
  /** That of whoever asked. */
  language: Language;
  /** Nobody waits for it: it only warms the worker. */
  warming: boolean;
  flag: SharedArrayBuffer;
  /** Nobody waits for it, or not any more. */
  settled: boolean;
  /** Hears what is told before the job is done. */
  onTold: ((told: unknown) => void) | undefined;
  resolve: (give: unknown) => void;
  reject: (error: Error) => void;
}

/** A job was given up by whoever asked for it. */
export class JobAborted extends Error {
  constructor() {
    super('the job was given up');
    this.name = 'JobAborted';
  }
}

/** A job that nobody waits for yet. */
export const jobOf = (number: number, name: string, ask: unknown): Job => ({
  number,
  name,
  ask,
  language: language(),
  warming: false,
  flag: new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT),
  settled: false,
  onTold: undefined,
  resolve: () => {},
  reject: () => {},
});

/** Tells a task that blocks its thread that it is given up. */
export function giveWord({ flag }: Job): void {
  Atomics.store(new Int32Array(flag), 0, 1);
}

export const isGivenUp = ({ flag }: Job): boolean => Atomics.load(new Int32Array(flag), 0) === 1;

/** Rejects a job that somebody still waits for. */
export function fail(job: Job, error: Error): void {
  if (job.settled) return;
  job.settled = true;
  job.reject(error);
}
