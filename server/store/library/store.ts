import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { RigAndTrip } from '../../app/input/plan-input.ts';
import {
  type KeptResults,
  type KeptRig,
  MOST_CHANGES,
  type StoreState,
  type TripChangeEntry,
  type UsedExtract,
} from '../../contract/kept.ts';
import type { RigFile } from '../../contract/rig.ts';
import { ExtractShelf } from '../extracts/extract-shelf.ts';
import type { StoreDriver, StoredTrip } from '../port/port.ts';

/** A trip that is new to the store. */
export interface NewTrip extends RigAndTrip {
  /** Given where it is not any id: the demo's. */
  id?: string;
  name: string;
  notes?: string;
  route: { fileName: string; hash: string; bytes: Uint8Array };
  extracts: UsedExtract[];
  /** What the extracts show near the route; null for the demo's own. */
  maps: Uint8Array | null;
  notice: string | null;
  /** In words, how it began. */
  beginning: string;
}

/** A write that goes out from another revision than the one kept is not done: what is kept is told. */
export type Saved =
  | { outcome: 'saved'; trip: StoredTrip }
  | { outcome: 'not-kept' }
  | { outcome: 'changed-elsewhere'; kept: StoredTrip };

/** A change of rig and trip with its words. */
export interface PlanChange extends RigAndTrip {
  change: string;
}

/** Parts of a trip that a write puts in place of what is kept. */
type Parts = Partial<Pick<StoredTrip, 'name' | 'notes' | 'extracts' | 'mapsRevision'>>;

interface StoreOptions {
  now?: () => string;
  /** For the files of extracts; null: one that goes with the store. */
  folder?: string | null;
}

/** The trips, rigs and extracts that are kept, by any driver. Methods throw InputProblem where the driver does. */
export class Store {
  readonly driver: StoreDriver;
  readonly extracts: ExtractShelf;
  readonly #state: StoreState;
  readonly #now: () => string;
  #damaged: readonly string[] = [];
  readonly #afterwards: (() => void)[] = [];

  constructor(
    driver: StoreDriver,
    state: StoreState,
    { now = () => new Date().toISOString(), folder = state.folder }: StoreOptions = {},
  ) {
    this.driver = driver;
    this.#state = state;
    this.#now = now;
    const own = join(tmpdir(), `drystage-memory-${process.pid}-${randomUUID()}`);
    this.extracts = new ExtractShelf(driver, folder ?? own);
    if (folder === null) this.whenClosed(() => rmSync(own, { recursive: true, force: true }));
  }

  /** Where all is kept. A disk that takes no more is told of, and how what is there may be had. */
  get state(): StoreState {
    const { trouble = null } = this.driver;
    if (trouble === null) return this.#damaged.length === 0 ? this.#state : this.#stateOfDamaged();
    const why = `${this.#state.folder}: ${trouble.came}. What was kept before is whole; what you change now is in memory until the disk takes it again, which is tried with each save and hourly. ${trouble.remedy}; before you end Drystage meanwhile, save your trips as files`;
    return { ...this.#state, keeps: 'memory', why };
  }

  #stateOfDamaged(): StoreState {
    const why = `Of what is kept, this cannot be read, as another program changed it: ${this.#damaged.join(', ')}. It is left as it is, all else is whole. Restore a backup beside it to have it again`;
    return { ...this.#state, why };
  }

  /** Looks whether all that is kept can be read; `state` tells what cannot. */
  lookOver(): void {
    this.#damaged = this.driver.damaged?.() ?? [];
  }

  /** Takes trips away for good that were deleted so long ago; how many. */
  purge(nowMs: number = Date.parse(this.#now())): number {
    const old = this.trips(true).filter(
      ({ deletedAt }) => deletedAt !== null && nowMs - Date.parse(deletedAt) > DELETED_MS,
    );
    for (const { id } of old) this.driver.trips.remove(id);
    return old.length;
  }

  /** Those last changed first; deleted ones alone where they are asked for. */
  trips(deleted = false): StoredTrip[] {
    return this.driver.trips
      .all()
      .filter(({ deletedAt }) => (deletedAt !== null) === deleted)
      .sort((a, b) => (a.changedAt < b.changedAt ? 1 : a.changedAt > b.changedAt ? -1 : 0));
  }

  /** Deleted ones too. */
  trip(id: string): StoredTrip | null {
    return this.driver.trips.get(id);
  }

  addTrip({ id = randomUUID(), route, maps, beginning, ...parts }: NewTrip): StoredTrip {
    const at = this.#now();
    const { rig, trip, name, notes = '', extracts, notice } = parts;
    const added: StoredTrip = {
      id,
      name,
      createdAt: at,
      changedAt: at,
      revision: 1,
      deletedAt: null,
      route: { fileName: route.fileName, hash: route.hash, bytes: route.bytes.byteLength },
      extracts,
      results: null,
      notice,
      isDemo: id === DEMO_ID,
      rig,
      trip,
      notes,
      standsAt: 0,
      mapsRevision: 1,
    };
    const { trips } = this.driver;
    this.driver.transaction(() => {
      trips.put(added);
      trips.putRoute(id, route.bytes);
      trips.putMaps(id, maps);
      trips.addChange(id, { seq: 0, after: null, at, change: beginning, rig, trip });
    });
    return added;
  }

  /** Puts rig and trip in place of what is kept, and notes the change. */
  changeTrip(id: string, revision: number, { rig, trip, change }: PlanChange): Saved {
    return this.#write(id, revision, (kept, at) => {
      const { trips } = this.driver;
      const seq = trips.lastChange(id) + 1;
      trips.addChange(id, { seq, after: kept.standsAt, at, change, rig, trip });
      trips.keepChanges(id, MOST_CHANGES);
      return { rig, trip, standsAt: seq, results: null };
    });
  }

  /** Goes to the state after a change, for undo and redo; null where that change is not kept. */
  standTrip(id: string, revision: number, seq: number): Saved | null {
    const entry = this.driver.trips.changeAt(id, seq);
    if (entry === null && this.trip(id) !== null) return null;
    return this.#write(id, revision, () =>
      entry === null ? {} : { rig: entry.rig, trip: entry.trip, standsAt: seq, results: null },
    );
  }

  /** Another name, other notes. */
  nameTrip(id: string, revision: number, parts: Pick<Parts, 'name' | 'notes'>): Saved {
    return this.#write(id, revision, () => parts);
  }

  /** Other maps, since extracts were added or taken away. */
  mapTrip(id: string, revision: number, maps: { bytes: Uint8Array; extracts: UsedExtract[] }): Saved {
    return this.#write(id, revision, (kept) => {
      this.driver.trips.putMaps(id, maps.bytes);
      return { extracts: maps.extracts, mapsRevision: kept.mapsRevision + 1, results: null };
    });
  }

  /** Deletes a trip, or takes that back; null where there is none. */
  deleteTrip(id: string, isDeleted: boolean): StoredTrip | null {
    return this.driver.transaction(() => {
      const kept = this.trip(id);
      if (kept === null || (kept.deletedAt !== null) === isDeleted) return kept;
      const at = this.#now();
      const trip = { ...kept, deletedAt: isDeleted ? at : null, revision: kept.revision + 1 };
      this.driver.trips.put(trip);
      return trip;
    });
  }

  /** A trip like another, with a history of its own that begins here; null where there is none. */
  copyTrip(id: string, name?: string): StoredTrip | null {
    const { trips } = this.driver;
    return this.driver.transaction(() => {
      const kept = this.trip(id);
      const bytes = trips.route(id);
      if (kept === null || bytes === null) return null;
      const { rig, trip, notes, extracts, notice, results } = kept;
      const copy = this.addTrip({
        ...{ rig, trip, notes, extracts, notice },
        name: name ?? this.#freeName(kept.name),
        route: { ...kept.route, bytes },
        maps: trips.maps(id),
        beginning: `Copy of "${kept.name}"`,
      });
      const withResults = { ...copy, results };
      trips.put(withResults);
      return withResults;
    });
  }

  /** Puts a trip in the first state of another: all that was changed goes. */
  resetTrip(id: string, first: NewTrip): StoredTrip {
    const { trips } = this.driver;
    return this.driver.transaction(() => {
      const kept = this.trip(id);
      trips.clearChanges(id);
      const added = this.addTrip({ ...first, id });
      if (kept === null) return added;
      const trip = {
        ...added,
        createdAt: kept.createdAt,
        revision: kept.revision + 1,
        mapsRevision: kept.mapsRevision + 1,
      };
      trips.put(trip);
      return trip;
    });
  }

  /** The newest first. */
  changes(id: string): TripChangeEntry[] {
    return this.driver.trips.changes(id);
  }

  /** What an analysis of a trip came to, as far as the trip is still what was analysed. That is no change. */
  noteResults(id: string, analysed: RigAndTrip & { mapsRevision: number }, results: KeptResults): void {
    this.driver.transaction(() => {
      const kept = this.trip(id);
      if (kept === null || kept.mapsRevision !== analysed.mapsRevision) return;
      if (planKey(kept) === planKey(analysed)) this.driver.trips.put({ ...kept, results });
    });
  }

  /** By name. */
  rigs(): KeptRig[] {
    return this.driver.rigs.all().sort((a, b) => (a.name < b.name ? -1 : Number(a.name > b.name)));
  }

  putRig(name: string, rig: RigFile): KeptRig {
    const kept = { name, changedAt: this.#now(), rig };
    this.driver.rigs.put(kept);
    return kept;
  }

  /** Whether there was one. */
  removeRig(name: string): boolean {
    return this.driver.rigs.remove(name);
  }

  /** Something to do once it is closed. */
  whenClosed(work: () => void): void {
    this.#afterwards.push(work);
  }

  close(): void {
    this.driver.close();
    for (const work of this.#afterwards.splice(0)) work();
  }

  #write(id: string, revision: number, parts: (kept: StoredTrip, at: string) => Partial<StoredTrip>): Saved {
    return this.driver.transaction(() => {
      const kept = this.trip(id);
      if (kept === null) return { outcome: 'not-kept' };
      if (kept.revision !== revision) return { outcome: 'changed-elsewhere', kept };
      const at = this.#now();
      const trip = { ...kept, ...parts(kept, at), changedAt: at, revision: revision + 1 };
      this.driver.trips.put(trip);
      return { outcome: 'saved', trip };
    });
  }

  /** A name with the first number that no trip has. */
  #freeName(name: string): string {
    const names = new Set(this.trips().map((trip) => trip.name));
    for (let number = 2; ; number += 1) {
      const free = `${name} (${number})`;
      if (!names.has(free)) return free;
    }
  }
}

/** A deleted trip can be restored for 30 days. Ours. */
const DELETED_MS = 30 * 24 * 3_600_000;

/** The id of the trip that every store begins with. */
export const DEMO_ID = 'demo';

const planKey = ({ rig, trip }: RigAndTrip): string => JSON.stringify([rig, trip]);
