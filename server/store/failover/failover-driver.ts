import { InputProblem, type Problem } from '../../core/input/problem.ts';
import { isBusy } from '../libsql/sql-file.ts';
import type { RigTable, StoreDriver, TripTable } from '../port/port.ts';
import { OverlayDriver } from './overlay-driver.ts';

/** The problem of a disk that takes no more; null for anything else, such as another process that is at it. */
function lossOf(error: unknown): Problem | null {
  if (!(error instanceof InputProblem) || isBusy(error.problem)) return null;
  const { code } = error.problem;
  return code === 'store-full' || code === 'store-unusable' ? error.problem : null;
}

/**
 * Writes to a disk until that takes no more, full or read-only: then all goes on in memory, on top of what the disk has,
 * and the write that found it out is done there. What the disk had stays as it was; `trouble` says why it is left alone.
 */
export class FailoverDriver implements StoreDriver {
  readonly trips: TripTable;
  readonly rigs: RigTable;
  readonly extracts: StoreDriver['extracts'];
  readonly #disk: StoreDriver;
  readonly #onLost: (trouble: Problem) => void;
  #now: StoreDriver;
  #trouble: Problem | null = null;
  #isInside = false;

  constructor(disk: StoreDriver, onLost: (trouble: Problem) => void = () => {}) {
    this.#disk = disk;
    this.#now = disk;
    this.#onLost = onLost;
    this.trips = this.#tripTable();
    this.rigs = {
      all: () => this.#now.rigs.all(),
      put: (rig) => this.transaction(() => this.#now.rigs.put(rig)),
      remove: (name) => this.transaction(() => this.#now.rigs.remove(name)),
    };
    this.extracts = disk.extracts;
  }

  /** Why nothing more goes to the disk; null while it does. */
  get trouble(): Problem | null {
    return this.#trouble;
  }

  transaction<T>(work: () => T): T {
    if (this.#isInside) return work();
    this.#isInside = true;
    try {
      return this.#now.transaction(work);
    } catch (error) {
      const trouble = this.#trouble === null ? lossOf(error) : null;
      if (trouble === null) throw error;
      this.#now = new OverlayDriver(this.#disk);
      this.#trouble = trouble;
      this.#onLost(trouble);
      return this.#now.transaction(work);
    } finally {
      this.#isInside = false;
    }
  }

  close(): void {
    this.#now.close();
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
