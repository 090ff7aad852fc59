import type { Language } from '../words/parts/language.ts';

/**
 * A worker's tasks by name: each takes a value that can be cloned between threads and a signal to give up. A task that
 * blocks its thread hears no signal: it asks `givenUp` between its steps and throws once it is true. What it `tell`s
 * before its end goes to whoever asked for it.
 */
export type TaskTable = Record<
  string,
  (ask: never, signal: AbortSignal, givenUp: () => boolean, tell: Tell) => Promise<unknown>
>;
export type Tell = (value: unknown) => void;

/** To a worker: a job for the task of that name. */
export interface JobMessage {
  job: number;
  name: string;
  ask: unknown;
  /** In which its texts are. */
  language: Language;
  /** One whole number, seen by both threads: 1 once the job is given up. */
  flag: SharedArrayBuffer;
}
/** To a worker: give the job up. */
export interface AbortMessage {
  abort: number;
}
/** From a worker, before a job is done. */
export interface ToldMessage {
  job: number;
  told: unknown;
}
/** From a worker. `fault` is an error that is nobody's input: its text goes to the log, not to the user. */
export type DoneMessage = { job: number; give: unknown } | { job: number; fault: string };
