import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { loadTrip } from '../app/load-trip.ts';
import type { LoadedTrip } from '../app/loaded-trip.ts';
import type { NamedFile } from '../app/ports.ts';
import { InputProblem, type Outcome } from '../core/input/problem.ts';
import { DEMO_EXTRACT } from '../io/demo-files.ts';
import { databaseUrl, dataFolder } from '../store/data-folder.ts';
import type { Store } from '../store/library/store.ts';
import { KeepingFileSet } from '../store/maps/keeping-file-set.ts';
import { unpackMaps } from '../store/maps/trip-maps.ts';
import { commandStore, STORE_FILE } from '../store/open-store.ts';
import type { StoredTrip } from '../store/port/port.ts';

/** Does something with the store of the data folder, and closes it. Throws InputProblem where the folder cannot be used. */
export async function withStore<T>(work: (store: Store) => T | Promise<T>): Promise<T> {
  const store = commandStore();
  try {
    return await work(store);
  } finally {
    store.close();
  }
}

/** Whether there is a store: a look makes no folder. */
const hasStore = (): boolean => databaseUrl() !== null || existsSync(join(dataFolder(), STORE_FILE));

/** Looks something up in the store; null where there is none. */
function lookUp<T>(look: (store: Store) => T): T | null {
  if (!hasStore()) return null;
  const store = commandStore();
  try {
    return look(store);
  } finally {
    store.close();
  }
}

/** The trip of a name or id. Throws InputProblem where several have the name. */
export function tripOf(store: Store, name: string): StoredTrip | null {
  const trips = store.trips();
  const [first, second] = trips.filter((trip) => trip.name === name);
  if (first === undefined) return trips.find(({ id }) => id === name) ?? null;
  if (second === undefined) return first;
  throw new InputProblem({
    code: 'command-invalid',
    place: name,
    came: 'a name that several kept trips have',
    expected: 'one of them',
    remedy: 'Give its id: drystage trip list has it',
  });
}

/** Whether a route is no file and the name of a kept trip. */
export const isKeptTrip = (route: string): boolean =>
  !existsSync(route) && lookUp((store) => tripOf(store, route)) !== null;

/** The kept trip of that name. */
export function keptTrip(name: string): StoredTrip {
  const trip = lookUp((store) => tripOf(store, name));
  if (trip === null) throw new Error(`the trip ${name} is not kept any more`);
  return trip;
}

/** The route's file of the kept trip of that name, and how wide the trip looks. */
export function keptRoute(name: string): {
  bytes: Uint8Array;
  fileName: string;
  corridorKm: number | undefined;
} {
  const { id, route, trip } = keptTrip(name);
  const bytes = lookUp(({ driver }) => driver.trips.route(id));
  if (bytes === null) throw new Error(`the trip ${id} has no route`);
  return { bytes, fileName: route.fileName, corridorKm: trip.corridorKm };
}

/** The file of a supply: the path itself, or a kept extract's where no file has that name. */
export async function supplyFile(path: string): Promise<NamedFile> {
  if (existsSync(path) || !hasStore()) return { path, source: path };
  return withStore(async ({ extracts }) => {
    const extract = extracts.named(path);
    return { path: extract === null ? path : await extracts.fileOf(extract), source: path };
  });
}

/** Loads the kept trip of that name. */
export async function loadKeptTrip(name: string): Promise<Outcome<LoadedTrip>> {
  const { id, route, notice } = keptTrip(name);
  const [bytes, maps] = lookUp(({ driver }) => [driver.trips.route(id), driver.trips.maps(id)]) ?? [];
  const files = new KeepingFileSet({
    ...(bytes && { route: bytes }),
    ...(maps && { maps: unpackMaps(maps) }),
  });
  const named = { path: '', source: route.fileName };
  const extracts = maps ? [] : [DEMO_EXTRACT];
  return loadTrip({ route: named, extracts, withGround: false, notice }, files);
}
