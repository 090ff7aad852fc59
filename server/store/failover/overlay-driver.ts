import type { KeptRig } from '../../contract/kept.ts';
import { MemoryDriver } from '../memory/memory-driver.ts';
import type { Claim, JobName, RigTable, StoreDriver, StoredTrip, TripTable } from '../port/port.ts';
import type { Meanwhile } from './lay-back.ts';

/**
 * Reads what a disk has and writes to memory: a trip is copied there before its first change, the rigs at once. Extracts
 * stay on the disk, whose refusals are passed on: their files lie there as well.
 */
export class OverlayDriver implements StoreDriver {
  readonly trips: TripTable;
  readonly rigs: RigTable;
  readonly extracts: StoreDriver['extracts'];
  readonly #disk: StoreDriver;
  readonly #memory = new MemoryDriver();
  /** Trips as the disk had them when they were first touched. */
  readonly #before = new Map<string, StoredTrip | null>();
  readonly #rigsBefore: readonly KeptRig[];
  /** Trips of the disk that are taken away. */
  #removed: ReadonlySet<string> = new Set();

  constructor(disk: StoreDriver) {
    this.#disk = disk;
    this.#rigsBefore = disk.rigs.all();
    for (const rig of this.#rigsBefore) this.#memory.rigs.put(rig);
    this.rigs = this.#memory.rigs;
    this.extracts = disk.extracts;
    this.trips = this.#tripTable();
  }

  transaction<T>(work: () => T): T {
    const before = this.#removed;
    try {
      return this.#memory.transaction(work);
    } catch (error) {
      this.#removed = before;
      throw error;
    }
  }

  claim(job: JobName): Claim | null {
    return this.#disk.claim(job);
  }

  /** What went on since the disk took no more. */
  get meanwhile(): Meanwhile {
    return { memory: this.#memory, trips: this.#before, rigs: this.#rigsBefore };
  }

  close(): void {
    this.#memory.close();
    this.#disk.close();
  }

  /** The table that has a trip now. */
  #of(id: string): TripTable {
    const { trips } = this.#memory;
    return trips.get(id) !== null || this.#removed.has(id) ? trips : this.#disk.trips;
  }

  /** The table in memory, with the trip in it where there is one. */
  #toWrite(id: string): TripTable {
    const { trips } = this.#memory;
    const from = this.#of(id);
    this.#touch(id);
    const trip = from === trips ? null : from.get(id);
    if (trip === null) return trips;
    trips.put(trip);
    const route = from.route(id);
    if (route !== null) trips.putRoute(id, route);
    trips.putMaps(id, from.maps(id));
    for (const entry of from.changes(id).reverse()) trips.addChange(id, entry);
    return trips;
  }

  #touch(id: string): void {
    if (!this.#before.has(id)) this.#before.set(id, this.#disk.trips.get(id));
  }

  #tripTable(): TripTable {
    const { trips } = this.#memory;
    return {
      all: () => [
        ...trips.all(),
        ...this.#disk.trips.all().filter(({ id }) => this.#of(id) === this.#disk.trips),
      ],
      get: (id) => this.#of(id).get(id),
      put: (trip) => this.#toWrite(trip.id).put(trip),
      remove: (id) => {
        this.#touch(id);
        trips.remove(id);
        this.#removed = new Set([...this.#removed, id]);
      },
      route: (id) => this.#of(id).route(id),
      putRoute: (id, bytes) => this.#toWrite(id).putRoute(id, bytes),
      maps: (id) => this.#of(id).maps(id),
      putMaps: (id, bytes) => this.#toWrite(id).putMaps(id, bytes),
      changes: (id) => this.#of(id).changes(id),
      changeAt: (id, seq) => this.#of(id).changeAt(id, seq),
      lastChange: (id) => this.#of(id).lastChange(id),
      addChange: (id, entry) => this.#toWrite(id).addChange(id, entry),
      keepChanges: (id, newest) => this.#toWrite(id).keepChanges(id, newest),
      clearChanges: (id) => this.#toWrite(id).clearChanges(id),
    };
  }
}
