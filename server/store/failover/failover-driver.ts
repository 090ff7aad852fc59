import { InputProblem, type Problem } from '../../core/input/problem.ts';
import { isBusy } from '../libsql/sql-file.ts';
import type { Claim, JobName, RigTable, StoreDriver, TripTable } from '../port/port.ts';
import { layBack } from './lay-back.ts';
import { OverlayDriver } from './overlay-driver.ts';

/** The problem of a disk that takes no more; null for anything else, such as another process that is at it. */
function lossOf(error: unknown): Problem | null {
  if (!(error instanceof InputProblem) || isBusy(error.problem)) return null;
  const { code } = error.problem;
  return code === 'store-full' || code === 'store-unusable' ? error.problem : null;
}

/** Who is told of a disk, and the time. */
export interface DiskWatch {
  /** It takes no more. */
  readonly onLost?: (trouble: Problem) => void;
  /** It takes all again, and has it. */
  readonly onFound?: () => void;
  /** Milliseconds. */
  readonly clock?: () => number;
}

/** A disk that takes no more is not tried more often than this (ours): each time all of memory is written. */
const PAUSE_MS = 10_000;

/**
 * Writes to a disk until that takes no more, full or read-only: then all goes on in memory, on top of what the disk has,
 * and the write that found it out is done there. What the disk had stays as it was; `trouble` says why it is left alone.
 * Before later writes, and when it is asked to (`tryDisk`), it is tried whether the disk takes all of that again.
 */
export class FailoverDriver implements StoreDriver {
  readonly trips: TripTable;
  readonly rigs: RigTable;
  readonly extracts: StoreDriver['extracts'];
  readonly #disk: StoreDriver;
  readonly #onLost: (trouble: Problem) => void;
  readonly #onFound: () => void;
  readonly #clock: () => number;
  #now: StoreDriver;
  #overlay: OverlayDriver | null = null;
  #triedAt = 0;
  #trouble: Problem | null = null;
  #isInside = false;

  constructor(
    disk: StoreDriver,
    { onLost = () => {}, onFound = () => {}, clock = Date.now }: DiskWatch = {},
  ) {
    this.#disk = disk;
    this.#now = disk;
    this.#onLost = onLost;
    this.#onFound = onFound;
    this.#clock = clock;
    this.trips = this.#tripTable();
    this.rigs = {
      all: () => this.#now.rigs.all(),
      put: (rig) => this.transaction(() => this.#now.rigs.put(rig)),
      remove: (name) => this.transaction(() => this.#now.rigs.remove(name)),
    };
    this.extracts = disk.extracts;
  }

  claim(job: JobName): Claim | null {
    return this.#disk.claim(job);
  }

  /** Why nothing more goes to the disk; null while it does. */
  get trouble(): Problem | null {
    return this.#trouble;
  }

  transaction<T>(work: () => T): T {
    if (this.#isInside) return work();
    if (this.#clock() - this.#triedAt >= PAUSE_MS) this.tryDisk();
    this.#isInside = true;
    try {
      return this.#now.transaction(work);
    } catch (error) {
      const trouble = this.#trouble === null ? lossOf(error) : null;
      if (trouble === null) throw error;
      this.#overlay = new OverlayDriver(this.#disk);
      this.#now = this.#overlay;
      this.#triedAt = this.#clock();
      this.#trouble = trouble;
      this.#onLost(trouble);
      return this.#now.transaction(work);
    } finally {
      this.#isInside = false;
    }
  }

  damaged(): string[] {
    return this.#disk.damaged?.() ?? [];
  }

  /** Where the disk took no more: lays what went on in memory back on it, if it takes that now. */
  tryDisk(): void {
    if (this.#overlay === null) return;
    this.#triedAt = this.#clock();
    try {
      layBack(this.#disk, this.#overlay.meanwhile);
    } catch (error) {
      if (error instanceof InputProblem) return;
      throw error;
    }
    this.#overlay = null;
    this.#now = this.#disk;
    this.#trouble = null;
    this.#onFound();
  }

  /** What was not laid back yet is tried a last time. */
  close(): void {
    try {
      this.tryDisk();
    } finally {
      this.#now.close();
    }
  }

  #tripTable(): TripTable {
    const transaction = (work: () => void) => this.transaction(work);
    return {
      all: () => this.#now.trips.all(),
      get: (id) => this.#now.trips.get(id),
      put: (trip) => transaction(() => this.#now.trips.put(trip)),
      remove: (id) => transaction(() => this.#now.trips.remove(id)),
      route: (id) => this.#now.trips.route(id),
      putRoute: (id, bytes) => transaction(() => this.#now.trips.putRoute(id, bytes)),
      maps: (id) => this.#now.trips.maps(id),
      putMaps: (id, bytes) => transaction(() => this.#now.trips.putMaps(id, bytes)),
      changes: (id) => this.#now.trips.changes(id),
      changeAt: (id, seq) => this.#now.trips.changeAt(id, seq),
      lastChange: (id) => this.#now.trips.lastChange(id),
      addChange: (id, entry) => transaction(() => this.#now.trips.addChange(id, entry)),
      keepChanges: (id, newest) => transaction(() => this.#now.trips.keepChanges(id, newest)),
      clearChanges: (id) => transaction(() => this.#now.trips.clearChanges(id)),
    };
  }
}
