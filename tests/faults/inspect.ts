import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { backUp, restoreBackup } from '../../server/store/backup/backup.ts';
import type { Store } from '../../server/store/library/store.ts';
import { STORE_VERSION } from '../../server/store/libsql/schema.ts';
import { SqlFile } from '../../server/store/libsql/sql-file.ts';
import { folderStore, STORE_FILE } from '../../server/store/open-store.ts';
import { BACKUP, type Kind } from './kinds.ts';

/** What is wrong with a data folder after the process that wrote to it was killed; `words` are those that it had said. */
export async function faultsOf(folder: string, kind: Kind, words: readonly string[]): Promise<string[]> {
  const faults = [...fileFaults(join(folder, STORE_FILE))];
  const store = folderStore(folder);
  try {
    faults.push(...extractFaults(store, folder));
    if (kind === 'autosave') faults.push(...autosaveFaults(store, words));
    if (kind === 'delete') faults.push(...deleteFaults(store, words));
    if (kind === 'ingest') faults.push(...ingestFaults(store, words));
    if (kind === 'backup') faults.push(...(await backupFaults(folder, words)));
    if (kind === 'migration') faults.push(...migrationFaults(store));
    await store.extracts.sweep();
    faults.push(...extractFaults(store, folder), ...leftovers(store, folder));
  } finally {
    store.close();
  }
  return [...faults, ...fileFaults(join(folder, STORE_FILE), STORE_VERSION)];
}

function fileFaults(path: string, version?: number): string[] {
  const file = new SqlFile(path);
  try {
    const check = file.all('PRAGMA integrity_check').map((row) => row.integrity_check);
    const keys = file.all('PRAGMA foreign_key_check');
    const user = file.one('PRAGMA user_version')?.user_version;
    return [
      ...(isDeepStrictEqual(check, ['ok']) ? [] : [`integrity: ${check.join('; ')}`]),
      ...(keys.length === 0 ? [] : [`${keys.length} rows of trips that are not there`]),
      ...(version === undefined || user === version ? [] : [`version ${user}`]),
    ];
  } finally {
    file.close();
  }
}

const WORLD = [-180, -90, 180, 90] as const;

/** An extract that counts has all its points and its file. */
function extractFaults({ extracts, driver }: Store, folder: string): string[] {
  return extracts.all().flatMap(({ id, counts, hash }) => {
    // That of the old store's fixture has no file.
    if (id === 'e1') return [];
    const points = driver.extracts.pointsIn(id, [[...WORLD]]).length;
    const is = createHash('sha256')
      .update(readFileSync(join(folder, 'extracts', id)))
      .digest('hex');
    return [
      ...(points === counts.supplies ? [] : [`extract ${id} has ${points} of ${counts.supplies} points`]),
      ...(is === hash ? [] : [`extract ${id} has another file`]),
    ];
  });
}

function leftovers({ driver, extracts }: Store, folder: string): string[] {
  const ids = new Set(extracts.all().map(({ id }) => id));
  const files = namesIn(join(folder, 'extracts')).filter((name) => !ids.has(name));
  const hidden = driver.extracts.hidden();
  return [...hidden.map((id) => `hidden ${id} is left`), ...files.map((name) => `the file ${name} is left`)];
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** The words that begin with one, each as the words after it, the last one last. */
const said = (words: readonly string[], first: string): string[][] =>
  words.filter((line) => line.startsWith(`${first} `)).map((line) => line.split(' ').slice(1));

/** The last change that was acknowledged is there, or the one after it, and all as it was at that revision. */
function autosaveFaults(store: Store, words: readonly string[]): string[] {
  const [trip] = store.trips();
  if (trip === undefined) return ['the trip is gone'];
  const last = Number(said(words, 'saved').at(-1)?.[0] ?? trip.revision);
  const { revision, standsAt } = trip;
  const entry = store.driver.trips.changeAt(trip.id, standsAt);
  const corridorKm = 1 + ((revision - 1) % 40);
  return [
    ...(revision === last || revision === last + 1
      ? []
      : [`revision ${revision} after ${last} was acknowledged`]),
    ...(revision === 1 || trip.trip.corridorKm === corridorKm
      ? []
      : ['rig and trip are of another revision']),
    ...(isDeepStrictEqual(entry?.trip, trip.trip) ? [] : ['the list of changes has another state']),
    ...(store.driver.trips.lastChange(trip.id) === standsAt ? [] : ['the list of changes goes on']),
    ...(revision === 1 || entry?.change === `Revision ${revision}` ? [] : ['the last change is another']),
  ];
}

/** Each copy is as was said last, or as the step after it would have it. */
function deleteFaults(store: Store, words: readonly string[]): string[] {
  const state = new Map<string, string>();
  for (const line of words) {
    const [word = '', id = ''] = line.split(' ');
    if (id !== '') state.set(id, word);
  }
  const ids = [...state.keys()];
  return ids.flatMap((id, index) => {
    const trip = store.trip(id);
    if (trip === null) return [`copy ${id} is gone`];
    if (store.driver.trips.route(id) === null || store.changes(id).length !== 1)
      return [`copy ${id} is not whole`];
    const isDeleted = trip.deletedAt !== null;
    const mayBeNext = index === ids.length - 1;
    const expected = state.get(id) === 'deleted';
    return isDeleted === expected || mayBeNext
      ? []
      : [`copy ${id} is ${isDeleted ? 'deleted' : 'there'} again`];
  });
}

/** What was added last is there, unless its going had begun; what was removed is not. */
function ingestFaults(store: Store, words: readonly string[]): string[] {
  const ids = new Set(store.extracts.all().map(({ id }) => id));
  const [added] = said(words, 'added').at(-1) ?? [];
  const going = new Set(said(words, 'removing').map(([id]) => id));
  const back = said(words, 'removed').flatMap(([id = '']) => (ids.has(id) ? [`extract ${id} is back`] : []));
  const isLost = added !== undefined && !going.has(added) && !ids.has(added);
  return [...back, ...(isLost ? [`extract ${added} is lost`] : [])];
}

/** Every backup that is there is whole, the last that was acknowledged is there, and the next one takes parts away. */
async function backupFaults(folder: string, words: readonly string[]): Promise<string[]> {
  await backUp(folder, join(folder, `last${BACKUP}`));
  const names = namesIn(folder).filter((name) => name.includes(BACKUP));
  const faults = names.filter((name) => !name.endsWith(BACKUP)).map((name) => `${name} is left`);
  const revisions: number[] = [];
  for (const name of names) {
    if (name.endsWith(BACKUP)) revisions.push(await restoredRevision(folder, name));
    rmSync(join(folder, name));
  }
  const lost = said(words, 'backup').filter(([revision]) => !revisions.includes(Number(revision)));
  return [...faults, ...lost.map(([revision]) => `the backup of revision ${revision} is gone`)];
}

async function restoredRevision(folder: string, name: string): Promise<number> {
  const restored = join(folder, 'restored');
  await restoreBackup(join(folder, name), restored);
  const store = folderStore(restored);
  try {
    return store.trips()[0]?.revision ?? 0;
  } finally {
    store.close();
    rmSync(restored, { recursive: true });
  }
}

/** Whenever it ended: all that the old store held is there now. */
function migrationFaults(store: Store): string[] {
  const trip = store.trip('t1');
  const order = store.changes('t1').map(({ seq, after }) => [seq, after]);
  return [
    ...(trip?.revision === 3 && trip.notes === 'dry' ? [] : ['the trip is not as it was']),
    ...(isDeepStrictEqual(order, [
      [2, 1],
      [1, 0],
      [0, null],
    ])
      ? []
      : ['its changes are not as they were']),
    ...(store.trips(true).length === 1 && store.rigs().length === 1 ? [] : ['something is gone']),
  ];
}
