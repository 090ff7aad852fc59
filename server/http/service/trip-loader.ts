import type { NamedFile } from '../../app/ports.ts';
import type { Bbox } from '../../contract/common.ts';
import type { ExtractsForTrip } from '../../contract/kept.ts';
import { CORRIDOR_KM } from '../../core/defaults/trip-defaults.ts';
import { InputProblem, type Outcome } from '../../core/input/problem.ts';
import { DEMO_EXTRACT, DEMO_NOTICE, DEMO_ROUTE } from '../../io/demo-files.ts';
import type { Ingested } from '../../store/extracts/ingest.ts';
import { DEMO_ID, type Store } from '../../store/library/store.ts';
import type { StoredTrip } from '../../store/port/port.ts';
import type { TripFromFile } from '../../store/trip-file/read-trip-file.ts';
import type { WorkerPool } from '../../work/pool.ts';
import type { IngestAsk, KeepAsk, KeepGive, LoadAsk, MergeAsk, tasks } from '../../work/tasks.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';
import type { Limits } from './limits.ts';
import { TripStore } from './trip-store.ts';

/** A trip that is ready to be reckoned with. */
export interface ReadyTrip {
  /** One key, one content. */
  key: string;
  packed: SharedArrayBuffer;
  /** As it is kept; null for one that is only read. */
  kept: StoredTrip | null;
}

interface LoaderOptions {
  reading: WorkerPool<typeof tasks>;
  store: Store;
  limits: Limits;
}

/** Loads trips in the reading worker, and keeps those last used in memory: from the store, the demo's files or an upload. */
export class TripLoader {
  readonly #reading: WorkerPool<typeof tasks>;
  readonly #store: Store;
  readonly #limits: Limits;
  readonly #memory: TripStore;
  #demo: Promise<SharedArrayBuffer> | null = null;

  constructor({ reading, store, limits }: LoaderOptions) {
    this.#reading = reading;
    this.#store = store;
    this.#limits = limits;
    this.#memory = new TripStore(limits.keptTrips, limits.keptBytes);
  }

  /** Trips in memory. */
  get count(): number {
    return this.#memory.count;
  }

  /** Reads files for an analysis alone. */
  async read(ask: LoadAsk, signal: AbortSignal): Promise<SharedArrayBuffer> {
    return valueOrThrow(await this.#reading.run('load', ask, { timeoutMs: this.#limits.readMs, signal }));
  }

  /** Reads files so that they can be kept. */
  async readToKeep(ask: KeepAsk, signal: AbortSignal): Promise<KeepGive> {
    return valueOrThrow(await this.#reading.run('keep', ask, { timeoutMs: this.#limits.readMs, signal }));
  }

  /** Reads further extracts for a trip that is kept, beside those it has. */
  async readMore(trip: StoredTrip, extracts: NamedFile[], signal: AbortSignal): Promise<KeepGive> {
    return this.readToKeep(
      { ...this.#keptOf(trip), extracts: [...ownOf(this.#mapsOf(trip)), ...extracts] },
      signal,
    );
  }

  /** A kept trip without one of the extracts that it has. */
  async readWithout(trip: StoredTrip, name: string, signal: AbortSignal): Promise<KeepGive> {
    const own = ownOf(this.#mapsOf(trip)).filter(({ source }) => source !== name);
    return this.readToKeep({ ...this.#keptOf(trip), extracts: own, without: name }, signal);
  }

  #mapsOf({ id }: StoredTrip): Uint8Array | null {
    return this.#store.driver.trips.maps(id);
  }

  #keptOf(trip: StoredTrip): Pick<KeepAsk, 'route' | 'maps' | 'notice'> {
    const route = { bytes: this.#routeOf(trip.id), source: trip.route.fileName };
    return { route, maps: this.#mapsOf(trip), notice: trip.notice };
  }

  /** What each kept extract has for the route of a trip. */
  async extractsFor(trip: StoredTrip): Promise<ExtractsForTrip> {
    const { extracts } = this.#store;
    const all = extracts.all();
    const ask = {
      route: this.#routeOf(trip.id),
      source: trip.route.fileName,
      marginKm: trip.trip.corridorKm ?? CORRIDOR_KM,
      extents: all.map(({ bbox }) => bbox),
    };
    const { boxes, offKm } = valueOrThrow(
      await this.#reading.run('alongRoute', ask, { timeoutMs: this.#limits.readMs }),
    );
    const told = all.map(({ id, name, asOf }, index) => ({
      ...{ id, name, asOf },
      isUsed: trip.extracts.some((used) => used.id === id),
      offRouteKm: offKm[index] ?? null,
      supplies: extracts.pointsIn(id, boxes).length,
    }));
    return { extracts: told };
  }

  /** Boxes in which all lies within some kilometres of a trip's route. */
  async boxesAlong(trip: StoredTrip, marginKm: number): Promise<Bbox[]> {
    const ask = { route: this.#routeOf(trip.id), source: trip.route.fileName, marginKm, extents: [] };
    const timeoutMs = this.#limits.readMs;
    return valueOrThrow(await this.#reading.run('alongRoute', ask, { timeoutMs })).boxes;
  }

  /** Makes one file of the answers of an Overpass server. */
  async merge(ask: MergeAsk, signal: AbortSignal): Promise<Outcome<void>> {
    return this.#reading.run('mergeChunks', ask, { timeoutMs: this.#limits.readMs, signal });
  }

  /** Reads an extract whole, to be kept. */
  async ingest(ask: IngestAsk, signal: AbortSignal): Promise<Outcome<Ingested>> {
    return this.#reading.run('ingest', ask, { timeoutMs: this.#limits.readMs, signal });
  }

  /** The file of a kept trip, as UTF-8. */
  async write(trip: StoredTrip, signal: AbortSignal): Promise<Uint8Array> {
    const { name, notes, notice, rig, trip: said, route } = trip;
    const maps = this.#store.driver.trips.maps(trip.id) ?? (await this.readMore(trip, [], signal)).maps;
    const ask = {
      ...{ name, notes, notice, rig, trip: said, maps },
      route: { fileName: route.fileName, bytes: this.#routeOf(trip.id) },
      written: new Date().toISOString(),
    };
    return valueOrThrow(
      await this.#reading.run('writeTrip', ask, { timeoutMs: this.#limits.readMs, signal }),
    );
  }

  /** Reads the file of a trip, and tries whether it can be reckoned with. */
  async readFile(file: NamedFile, signal: AbortSignal): Promise<TripFromFile> {
    return valueOrThrow(
      await this.#reading.run('readTrip', file, { timeoutMs: this.#limits.readMs, signal }),
    );
  }

  /** Keeps a loaded trip in memory: a kept one, or by the id of one that is only read. */
  remember(trip: StoredTrip | string, packed: SharedArrayBuffer): void {
    this.#memory.put(typeof trip === 'string' ? trip : keyOf(trip), packed);
  }

  /** The trip of an id; `not-found` where it is neither kept nor in memory any more. */
  async ready(id: string): Promise<ReadyTrip> {
    const kept = this.#store.trip(id);
    if (kept !== null) return this.#readyKept(kept);
    const packed = id === DEMO_ID ? await this.demo() : this.#memory.get(id);
    if (packed !== null) return { key: id, packed, kept: null };
    throw new InputProblem({
      code: 'not-found',
      came: 'an analysis that is no longer kept',
      expected: 'one that was sent since the server started and was used not long ago',
      remedy: 'Send the files again',
    });
  }

  async #readyKept(kept: StoredTrip): Promise<ReadyTrip> {
    const maps = this.#store.driver.trips.maps(kept.id);
    // The demo's own maps are the same for all trips that go by them.
    if (maps === null) return { key: DEMO_ID, packed: await this.demo(), kept };
    const key = keyOf(kept);
    const inMemory = this.#memory.get(key);
    if (inMemory !== null) return { key, packed: inMemory, kept };
    const ask = {
      route: this.#routeOf(kept.id),
      source: kept.route.fileName,
      maps,
      notice: kept.notice,
    };
    const packed = valueOrThrow(await this.#reading.run('loadKept', ask, { timeoutMs: this.#limits.readMs }));
    this.remember(kept, packed);
    return { key, packed, kept };
  }

  #routeOf(id: string): Uint8Array {
    const bytes = this.#store.driver.trips.route(id);
    if (bytes === null) throw new Error(`the trip ${id} has no route`);
    return bytes;
  }

  /** The demo as its own files have it. */
  demo(): Promise<SharedArrayBuffer> {
    this.#demo ??= this.#reading
      .run(
        'load',
        { route: DEMO_ROUTE, extracts: [DEMO_EXTRACT], notice: DEMO_NOTICE },
        { timeoutMs: this.#limits.readMs },
      )
      .then(valueOrThrow)
      .catch((error: unknown) => {
        this.#demo = null;
        throw error;
      });
    return this.#demo;
  }
}

/** A trip without maps of its own goes by the demo's. */
const ownOf = (maps: Uint8Array | null): NamedFile[] => (maps === null ? [DEMO_EXTRACT] : []);

/** Names what a kept trip's maps are now. */
const keyOf = ({ id, mapsRevision }: StoredTrip): string => `${id}#${mapsRevision}`;
