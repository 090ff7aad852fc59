import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { InputProblem } from '../../../server/core/input/problem.ts';
import { buildApp } from '../../../server/http/app.ts';
import { keepDemo } from '../../../server/http/service/demo-trip.ts';
import { ingest } from '../../../server/store/extracts/ingest.ts';
import type { Store } from '../../../server/store/library/store.ts';
import { FolderLock } from '../../../server/store/libsql/folder-lock.ts';
import { openLibsql } from '../../../server/store/libsql/libsql-driver.ts';
import { STORE_VERSION } from '../../../server/store/libsql/schema.ts';
import { SqlFile } from '../../../server/store/libsql/sql-file.ts';
import { STORE_FILE, serverStore } from '../../../server/store/open-store.ts';
import { opened, scratchFolder, storeOf } from '../drivers.ts';
import { newTrip, RIG } from '../new-trip.ts';

const VERSION_1 = readFileSync(new URL('../../fixtures/store/version-1.sql', import.meta.url), 'utf8');

/** A database file made by a script. */
function fileOf(script: string): string {
  const path = join(scratchFolder(), STORE_FILE);
  const file = new SqlFile(path);
  file.script(script);
  file.close();
  return path;
}

function inspected<T>(path: string, look: (file: SqlFile) => T): T {
  const file = new SqlFile(path);
  try {
    return look(file);
  } finally {
    file.close();
  }
}

const problemOf = (work: () => unknown) => {
  try {
    work();
    return null;
  } catch (error) {
    return error instanceof InputProblem ? error.problem : error;
  }
};

describe('a store of version 1', () => {
  it('is brought to the present with all that it holds, and stays there', () => {
    const path = fileOf(VERSION_1);
    for (let time = 0; time < 2; time += 1) {
      const driver = openLibsql(path);
      const store = storeOf(driver);
      expect(store.trip('t1')).toMatchObject({ name: 'Across', revision: 3, standsAt: 2, notes: 'dry' });
      expect(store.changes('t1').map(({ seq, after, change }) => [seq, after, change])).toEqual([
        [2, 1, 'Corridor 7 km'],
        [1, 0, 'Corridor 6 km'],
        [0, null, 'Read from across.gpx'],
      ]);
      expect(store.changes('t2').map(({ after }) => after)).toEqual([null]);
      expect(store.trips(true).map(({ id }) => id)).toEqual(['t2']);
      expect(store.rigs()).toMatchObject([{ name: 'wagon' }]);
      expect(driver.extracts.all()).toMatchObject([{ name: 'Land' }]);
      expect(driver.extracts.pointsIn('e1', [[87, -36, 89, -34]])).toHaveLength(1);
      expect([...(driver.trips.route('t1') ?? [])]).toEqual([1, 2, 3]);
      driver.close();
    }
    const [version, check] = inspected(path, (file) => [
      file.one('PRAGMA user_version')?.user_version,
      file.one('PRAGMA integrity_check')?.integrity_check,
    ]);
    expect([version, check]).toEqual([STORE_VERSION, 'ok']);
  });
});

describe('a data folder that cannot be used', () => {
  it('is told apart: of a newer program, of another one, damaged', () => {
    const newer = fileOf(`${VERSION_1}; PRAGMA user_version = ${STORE_VERSION + 1}`);
    expect(problemOf(() => openLibsql(newer))).toMatchObject({ code: 'store-too-new' });
    expect(inspected(newer, (file) => file.one('SELECT count(*) AS n FROM trips')?.n)).toBe(2);
    const foreign = fileOf('CREATE TABLE songs (id INTEGER)');
    expect(problemOf(() => openLibsql(foreign))).toMatchObject({ code: 'store-unusable' });
    expect(inspected(foreign, (file) => file.all('SELECT name FROM sqlite_master'))).toHaveLength(1);
    const damaged = join(scratchFolder(), STORE_FILE);
    writeFileSync(damaged, 'This was a database once. '.repeat(200));
    expect(problemOf(() => openLibsql(damaged))).toMatchObject({
      code: 'store-unusable',
      came: 'a file in the data folder that is damaged',
    });
  });
});

describe('rows that another program changed', () => {
  it.each(['{broken', '{}', '[1]', 'null', '{"name": "a"}'])(
    'to %s are told and left, and nothing else is lost by them',
    async (document) => {
      const folder = scratchFolder();
      const first = await served(folder);
      const [bad, good] = [first.addTrip(newTrip()), first.addTrip(newTrip({ name: 'Along' }))];
      for (const name of ['wagon', 'truck']) first.putRig(name, RIG);
      await keepTaps(first, folder, 'taps');
      const taps = first.extracts.all()[0]?.id ?? '';
      await keepDemo(first);
      first.changeTrip(good.id, 1, { rig: RIG, trip: { corridorKm: 9 }, change: 'Corridor 9 km' });
      first.close();
      const path = join(folder, STORE_FILE);
      inspected(path, (file) => {
        file.run('UPDATE trips SET document = ? WHERE id IN (?, ?)', document, bad.id, 'demo');
        file.run("UPDATE rigs SET document = '[' WHERE name = 'truck'");
        file.run('UPDATE changes SET document = ? WHERE trip = ? AND seq = 0', document, good.id);
        file.run('UPDATE extracts SET document = ?', document);
      });
      const store = await served(folder);
      expect(store.state.keeps).toBe('folder');
      for (const told of [`trip ${bad.id}`, 'trip demo', 'rig truck', `extract ${taps}`])
        expect(store.state.why).toContain(told);
      expect(store.trips().map(({ id }) => id)).toEqual([good.id]);
      expect(store.rigs().map(({ name }) => name)).toEqual(['wagon']);
      expect(store.trip(good.id)).toMatchObject({ revision: 2, trip: { corridorKm: 9 } });
      expect(store.changes(good.id).map(({ seq }) => seq)).toEqual([1]);
      expect(store.standTrip(good.id, 2, 0)).toBeNull();
      expect(existsSync(join(folder, 'extracts', taps))).toBe(true);
      await keepDemo(store);
      expect(store.changes('demo')).toHaveLength(1);
      store.lookOver();
      expect(store.state.why).not.toContain('demo');
      const left = inspected(path, (file) => file.one('SELECT document FROM trips WHERE id = ?', bad.id));
      expect(left).toMatchObject({ document });
    },
  );
});

/** Takes a small extract in. */
async function keepTaps(store: Store, folder: string, name: string): Promise<void> {
  const path = join(folder, name);
  const tap = '<node id="1" lon="88" lat="-35"><tag k="amenity" v="drinking_water"/></node>';
  writeFileSync(path, `<osm version="0.6">${tap}</osm>`);
  await store.extracts.add({ path, fileName: name, isOurs: false }, (copy) => ingest(copy, name, {}));
}

describe('a full disk', () => {
  it('is told, and what was kept before is whole', () => {
    const path = join(scratchFolder(), STORE_FILE);
    const driver = opened(openLibsql(path, { mostPages: 60 }));
    const store = storeOf(driver);
    const { id } = store.addTrip(newTrip());
    const many = newTrip({ maps: new Uint8Array(500_000) });
    expect(problemOf(() => store.addTrip(many))).toMatchObject({ code: 'store-full' });
    expect(store.trips().map((trip) => trip.id)).toEqual([id]);
    expect(store.changes(id)).toHaveLength(1);
    const after = store.changeTrip(id, 1, { rig: RIG, trip: { corridorKm: 9 }, change: 'Corridor 9 km' });
    expect(after.outcome).toBe('saved');
    expect(inspected(path, (file) => file.one('PRAGMA integrity_check')?.integrity_check)).toBe('ok');
  });
});

const stores: Store[] = [];
afterEach(() => {
  for (const store of stores.splice(0)) store.close();
});
async function served(folder: string): Promise<Store> {
  const store = await serverStore(folder);
  stores.push(store);
  return store;
}

describe('the store of a server', () => {
  it('keeps in its folder, which it makes', async () => {
    const folder = join(scratchFolder(), 'a', 'b');
    const store = await served(folder);
    expect(store.state).toEqual({ keeps: 'folder', folder, why: null });
    const { id } = store.addTrip(newTrip());
    stores.pop()?.close();
    expect((await served(folder)).trip(id)?.name).toBe('Across');
  });

  it('of a second one is in memory, and says why', async () => {
    const folder = scratchFolder();
    const first = await served(folder);
    const second = await served(folder);
    expect(second.state).toMatchObject({ keeps: 'memory', why: expect.stringContaining('Another server') });
    second.addTrip(newTrip());
    expect(first.trips()).toEqual([]);
    stores.splice(0).map((store) => store.close());
    expect((await served(folder)).state.keeps).toBe('folder');
  });

  it('is in memory where the folder cannot be made, read or written, and an app on it works and says so', {
    tags: 'slow',
  }, async () => {
    const file = join(scratchFolder(), 'file');
    writeFileSync(file, 'no folder');
    const isFolder = join(scratchFolder(), 'data');
    mkdirSync(join(isFolder, STORE_FILE), { recursive: true });
    const newer = fileOf(`${VERSION_1}; PRAGMA user_version = 99`).replace(`/${STORE_FILE}`, '');
    for (const [folder, why] of [
      [join(file, 'data'), 'a data folder that cannot be made (ENOTDIR)'],
      [isFolder, 'a data folder that cannot be opened'],
      [newer, 'a data folder of version 99'],
    ] as const) {
      const store = await serverStore(folder);
      const app = await buildApp({ store, webFolder: '/nowhere' });
      try {
        const { trips, store: state } = (await app.inject('/api/trips')).json();
        expect(trips).toMatchObject([{ id: 'demo' }]);
        expect(state).toMatchObject({ keeps: 'memory', why: expect.stringContaining(why) });
        expect((await app.inject('/api/health')).json().store).toEqual(state);
      } finally {
        await app.close();
      }
    }
  });

  it('sweeps what an extract left that was cut off', async () => {
    const folder = scratchFolder();
    const store = await served(folder);
    store.driver.extracts.begin('half');
    stores.splice(0).map((one) => one.close());
    expect((await served(folder)).driver.extracts.hidden()).toEqual([]);
  });
});

describe('the lock of a folder', () => {
  it('is one for each kind, and free once it is let go', () => {
    const folder = scratchFolder();
    const lock = FolderLock.take(folder, 'server');
    expect(FolderLock.take(folder, 'server')).toBeNull();
    const other = FolderLock.take(folder, 'extracts');
    expect(other).not.toBeNull();
    lock?.release();
    const again = FolderLock.take(folder, 'server');
    expect(again).not.toBeNull();
    for (const one of [other, again]) one?.release();
  });
});
