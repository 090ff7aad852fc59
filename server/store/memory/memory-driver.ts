import type { Bbox } from '../../contract/common.ts';
import type { KeptRig, TripChangeEntry } from '../../contract/kept.ts';
import type {
  BoxedRow,
  Claim,
  ExtractTable,
  JobName,
  RigTable,
  StoreDriver,
  StoredExtract,
  StoredTrip,
  TripTable,
} from '../port/port.ts';

/** An extract in memory; `whole` is null while it is hidden. */
interface ExtractEntry {
  whole: StoredExtract | null;
  points: BoxedRow[];
  ground: BoxedRow[];
}

/** All that a driver in memory holds; entries are replaced and never changed. */
class Tables {
  readonly trips: Map<string, StoredTrip>;
  readonly routes: Map<string, Uint8Array>;
  readonly maps: Map<string, Uint8Array>;
  readonly changes: Map<string, readonly TripChangeEntry[]>;
  readonly rigs: Map<string, KeptRig>;
  readonly extracts: Map<string, ExtractEntry>;

  constructor(before?: Tables) {
    this.trips = new Map(before?.trips);
    this.routes = new Map(before?.routes);
    this.maps = new Map(before?.maps);
    this.changes = new Map(before?.changes);
    this.rigs = new Map(before?.rigs);
    this.extracts = new Map(before?.extracts);
  }
}

/** Keeps all in memory, until the process ends. */
export class MemoryDriver implements StoreDriver {
  #tables = new Tables();
  #isInside = false;
  readonly #claimed = new Set<JobName>();
  readonly trips: TripTable = this.#tripTable();
  readonly rigs: RigTable = this.#rigTable();
  readonly extracts: ExtractTable = this.#extractTable();

  transaction<T>(work: () => T): T {
    if (this.#isInside) return work();
    const before = new Tables(this.#tables);
    this.#isInside = true;
    try {
      return work();
    } catch (error) {
      this.#tables = before;
      throw error;
    } finally {
      this.#isInside = false;
    }
  }

  claim(job: JobName): Claim | null {
    if (this.#claimed.has(job)) return null;
    this.#claimed.add(job);
    return { release: () => void this.#claimed.delete(job) };
  }

  close(): void {
    this.#tables = new Tables();
  }

  #tripTable(): TripTable {
    const changes = (id: string) => this.#tables.changes.get(id) ?? [];
    return {
      all: () => copy([...this.#tables.trips.values()]),
      get: (id) => copy(this.#tables.trips.get(id) ?? null),
      put: (trip) => void this.#tables.trips.set(trip.id, copy(trip)),
      remove: (id) => {
        const { trips, routes, maps, changes } = this.#tables;
        for (const table of [trips, routes, maps, changes]) table.delete(id);
      },
      route: (id) => this.#tables.routes.get(id) ?? null,
      putRoute: (id, bytes) => void this.#tables.routes.set(id, bytes),
      maps: (id) => this.#tables.maps.get(id) ?? null,
      putMaps: (id, bytes) => {
        if (bytes === null) this.#tables.maps.delete(id);
        else this.#tables.maps.set(id, bytes);
      },
      changes: (id) => copy([...changes(id)].reverse()),
      changeAt: (id, seq) => copy(changes(id).find((entry) => entry.seq === seq) ?? null),
      lastChange: (id) => changes(id).at(-1)?.seq ?? -1,
      addChange: (id, entry) => void this.#tables.changes.set(id, [...changes(id), copy(entry)]),
      keepChanges: (id, newest) => void this.#tables.changes.set(id, changes(id).slice(-newest)),
      clearChanges: (id) => void this.#tables.changes.delete(id),
    };
  }

  #rigTable(): RigTable {
    return {
      all: () => copy([...this.#tables.rigs.values()]),
      put: (rig) => void this.#tables.rigs.set(rig.name, copy(rig)),
      remove: (name) => this.#tables.rigs.delete(name),
    };
  }

  #extractTable(): ExtractTable {
    const entry = (id: string): ExtractEntry => {
      const known = this.#tables.extracts.get(id);
      if (known === undefined) throw new Error(`no extract ${id} was begun`);
      return known;
    };
    const replace = (id: string, parts: Partial<ExtractEntry>) =>
      void this.#tables.extracts.set(id, { ...entry(id), ...parts });
    const all = () => [...this.#tables.extracts];
    return {
      all: () => copy(all().flatMap(([, { whole }]) => (whole === null ? [] : [whole]))),
      hidden: () => all().flatMap(([id, { whole }]) => (whole === null ? [id] : [])),
      begin: (id) => void this.#tables.extracts.set(id, { whole: null, points: [], ground: [] }),
      addPoints: (id, rows) => replace(id, { points: [...entry(id).points, ...rows] }),
      addGround: (id, rows) => replace(id, { ground: [...entry(id).ground, ...rows] }),
      show: (extract) => replace(extract.id, { whole: copy(extract) }),
      hide: (id) => replace(id, { whole: null }),
      dropSome: (id) => {
        this.#tables.extracts.delete(id);
        return false;
      },
      pointsIn: (id, boxes) =>
        jsonOf(entry(id).points.filter(({ box }) => boxes.some((one) => touches(one, box)))),
      groundIn: (id, box, most) =>
        jsonOf(entry(id).ground.filter((row) => touches(box, row.box))).slice(0, most),
    };
  }
}

/** Nobody outside holds what is kept here, and so nobody changes it. */
const copy = <T>(value: T): T => structuredClone(value);

const touches = (a: Bbox, b: Bbox): boolean => a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];

const jsonOf = (rows: readonly BoxedRow[]): string[] => rows.map(({ json }) => json);
