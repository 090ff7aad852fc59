import type { NamedFile } from '../../app/ports.ts';
import type { ExtractReading } from '../../contract/supplies/readings.ts';
import { InputProblem } from '../../core/input/problem.ts';
import type { OnRows } from '../../store/extracts/extract-shelf.ts';
import { type CorridorPlan, fetchExtract } from '../../store/extracts/fetch-extract.ts';
import type { Store } from '../../store/library/store.ts';
import type { StoredExtract } from '../../store/port/port.ts';
import { JobAborted } from '../../work/job.ts';
import { Reading } from './reading.ts';
import type { TripLoader } from './trip-loader.ts';

/** Takes extracts in that were sent or asked for, and tells how that goes on. */
export class ExtractKeeper {
  readonly #store: Store;
  readonly #loader: TripLoader;
  readonly #readings = new Map<string, Reading>();

  constructor(store: Store, loader: TripLoader) {
    this.#store = store;
    this.#loader = loader;
  }

  /** Those on their way, in the order in which they came. */
  get reading(): ExtractReading[] {
    return [...this.#readings.values()].map((reading) => reading.told());
  }

  /** Calls one off; whether there was one. */
  callOff(id: string): boolean {
    const reading = this.#readings.get(id);
    reading?.control.abort();
    return reading !== undefined;
  }

  /**
   * Does work on something that is on its way, which `gone` or `callOff` ends: rejects with JobAborted or the problem
   * `called-off` then, and with InputProblem where it is refused.
   */
  async during<T>(
    reading: Reading,
    gone: AbortSignal,
    work: (reading: Reading, signal: AbortSignal) => Promise<T>,
  ): Promise<T> {
    this.#readings.set(reading.id, reading);
    const signal = AbortSignal.any([gone, reading.control.signal]);
    try {
      return await work(reading, signal);
    } catch (error) {
      if (reading.control.signal.aborted) throw calledOff(reading.name);
      throw signal.aborted ? new JobAborted() : error;
    } finally {
      this.#readings.delete(reading.id);
    }
  }

  /** Takes a file in that came. Throws InputProblem, and leaves nothing behind then. */
  async keep(
    file: NamedFile,
    name: string | null,
    reading: Reading,
    signal: AbortSignal,
  ): Promise<StoredExtract> {
    reading.name = name ?? file.source;
    return this.#store.extracts.add(
      { path: file.path, fileName: file.source, name: name ?? undefined, isOurs: true },
      (path) => this.#read(path, file.source, reading, signal),
      rowsOf(reading, signal),
    );
  }

  /** Asks for a corridor and keeps what comes. Throws InputProblem. */
  fetch(plan: CorridorPlan, gone: AbortSignal): Promise<StoredExtract> {
    return this.during(new Reading(plan.name, 'asking'), gone, (reading, signal) =>
      fetchExtract(this.#store.extracts, plan, {
        signal,
        onState: (state) => reading.asked(state),
        merge: (fetched, to) => this.#loader.merge({ fetched: [...fetched], to }, signal),
        read: (path) => this.#read(path, plan.name, reading, signal),
        onRows: rowsOf(reading, signal),
      }),
    );
  }

  #read(path: string, source: string, reading: Reading, signal: AbortSignal) {
    reading.stage = 'reading';
    return this.#loader.ingest({ path, source, progress: reading.progress }, signal);
  }
}

/** Tells of rows, and ends their writing where it was called off. */
const rowsOf =
  (reading: Reading, signal: AbortSignal): OnRows =>
  (done, total) => {
    signal.throwIfAborted();
    reading.wrote(done, total);
  };

const calledOff = (name: string) =>
  new InputProblem({
    code: 'called-off',
    source: name,
    came: 'an extract that was called off on its way',
    expected: 'to be left to its end',
    remedy: 'Send it again; nothing of it was kept',
  });
