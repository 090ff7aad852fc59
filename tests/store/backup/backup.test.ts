import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputProblem } from '../../../server/core/input/problem.ts';
import { backUp, restoreBackup } from '../../../server/store/backup/backup.ts';
import { ingest } from '../../../server/store/extracts/ingest.ts';
import type { Store } from '../../../server/store/library/store.ts';
import { SqlFile } from '../../../server/store/libsql/sql-file.ts';
import { folderStore, STORE_FILE, serverStore } from '../../../server/store/open-store.ts';
import { scratchFolder } from '../drivers.ts';
import { newTrip, RIG } from '../new-trip.ts';

const problemOf = async (work: () => unknown) => {
  try {
    await work();
    return null;
  } catch (error) {
    return error instanceof InputProblem ? error.problem : error;
  }
};

/** All of the trips and rigs of a store. */
const contentOf = (store: Store) => ({
  rigs: store.rigs(),
  trips: [...store.trips(), ...store.trips(true)].map((trip) => ({
    trip,
    changes: store.changes(trip.id),
    route: [...(store.driver.trips.route(trip.id) ?? [])],
    maps: [...(store.driver.trips.maps(trip.id) ?? [])],
  })),
});

function inStore<T>(folder: string, work: (store: Store) => T): T {
  const store = folderStore(folder);
  try {
    return work(store);
  } finally {
    store.close();
  }
}

const tap =
  '<osm version="0.6"><node id="1" lon="88" lat="-35"><tag k="amenity" v="drinking_water"/></node></osm>';

describe('a backup', () => {
  it('of a server that runs holds all trips and rigs, and no extracts; restored it is the store again', async () => {
    const folder = scratchFolder();
    const data = join(folder, 'data');
    const store = await serverStore(data);
    const { id } = store.addTrip(newTrip());
    store.changeTrip(id, 1, { rig: RIG, trip: { corridorKm: 9 }, change: 'Corridor 9 km' });
    store.deleteTrip(store.copyTrip(id)?.id ?? '', true);
    store.putRig('wagon', RIG);
    writeFileSync(join(folder, 'tap.osm'), tap);
    const file = { path: join(folder, 'tap.osm'), fileName: 'tap.osm', isOurs: false };
    await store.extracts.add(file, (path) => ingest(path, 'tap.osm', {}));
    const to = join(folder, "it's.drystage");
    const facts = await backUp(data, to);
    expect(facts).toEqual({ bytes: readFileSync(to).length, trips: 2, rigs: 1, extractsLeftOut: 1 });
    const was = contentOf(store);
    expect(store.extracts.all()).toHaveLength(1);
    store.close();
    const again = join(folder, 'again');
    expect(await restoreBackup(to, again)).toMatchObject({ trips: 2, rigs: 1 });
    const restored = await serverStore(again);
    expect(restored.state.keeps).toBe('folder');
    expect(contentOf(restored)).toEqual(was);
    expect(restored.extracts.all()).toEqual([]);
    restored.close();
    expect(readdirSync(folder).sort()).toEqual(['again', 'data', "it's.drystage", 'tap.osm']);
  });

  it('is of one moment, whatever another process writes meanwhile', { tags: 'slow' }, async () => {
    const folder = scratchFolder();
    const data = join(folder, 'data');
    const { id } = inStore(data, (store) => store.addTrip(newTrip({ maps: new Uint8Array(2_000_000) })));
    const script = `
      import { folderStore } from ${JSON.stringify(new URL('../../../server/store/open-store.ts', import.meta.url).href)};
      const store = folderStore(process.argv[1]);
      for (let km = 2; ; km += 1) {
        const { id, revision, rig } = store.trips()[0];
        store.changeTrip(id, revision, { rig, trip: { corridorKm: km % 40 + 1 }, change: \`Corridor \${km % 40 + 1} km\` });
        store.putRig('wagon', { ...rig, name: String(revision + 1) });
        if (km === 2) console.log('begun');
      }`;
    const writer = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script, data], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    await once(writer.stdout, 'data');
    const seen: number[] = [];
    for (let time = 0; time < 4; time += 1) {
      const to = join(folder, `${time}.drystage`);
      await backUp(data, to);
      await restoreBackup(to, join(folder, `again-${time}`));
      inStore(join(folder, `again-${time}`), (store) => {
        const { revision, trip } = store.trip(id) ?? {};
        // Every change is there up to the one that the trip stands at, and the rig of it or of the one before.
        expect(store.changes(id)[0]?.change).toBe(`Corridor ${trip?.corridorKm} km`);
        const rig = Number(store.rigs()[0]?.rig.name);
        expect([revision, (revision ?? 0) - 1]).toContain(rig);
        seen.push(revision ?? 0);
      });
    }
    writer.kill('SIGKILL');
    await once(writer, 'exit');
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    expect(new Set(seen).size).toBe(4);
  });
});

describe('a backup is refused', () => {
  it('where its file is there, its folder is not, or nothing is kept', async () => {
    const folder = scratchFolder();
    const to = join(folder, 'all.drystage');
    expect(await problemOf(() => backUp(folder, to))).toMatchObject({ code: 'file-missing' });
    inStore(folder, (store) => store.addTrip(newTrip()));
    const lost = join(folder, 'nowhere', 'all.drystage');
    expect(await problemOf(() => backUp(folder, lost))).toMatchObject({
      code: 'file-unreadable',
      source: lost,
      came: 'a file that cannot be written (ENOENT)',
    });
    writeFileSync(to, 'mine');
    expect(await problemOf(() => backUp(folder, to))).toMatchObject({ came: 'a file that is there already' });
    expect(readFileSync(to, 'utf8')).toBe('mine');
    expect(readdirSync(folder).filter((name) => name.includes('part'))).toEqual([]);
  });

  it('of a store that is damaged, and leaves no file', async () => {
    const folder = scratchFolder();
    inStore(folder, (store) => store.addTrip(newTrip({ maps: new Uint8Array(50_000) })));
    const path = join(folder, STORE_FILE);
    const file = new SqlFile(path);
    file.script('PRAGMA wal_checkpoint(TRUNCATE)');
    file.close();
    const bytes = readFileSync(path);
    writeFileSync(path, bytes.fill(0xee, 4096 * 2, 4096 * 5));
    const to = join(folder, 'all.drystage');
    expect(await problemOf(() => backUp(folder, to))).toMatchObject({ code: 'store-unusable' });
    expect(readdirSync(folder)).not.toContain('all.drystage');
  });
});

describe('a restore', () => {
  it('touches no store that is there, nor the journal of one, nor a folder that a server has', async () => {
    const folder = scratchFolder();
    inStore(join(folder, 'data'), (store) => store.addTrip(newTrip()));
    const to = join(folder, 'all.drystage');
    await backUp(join(folder, 'data'), to);
    expect(await problemOf(() => restoreBackup(to, join(folder, 'data')))).toMatchObject({
      came: 'a data folder in which something is kept already',
    });
    const journal = join(folder, 'journal');
    mkdirSync(journal);
    writeFileSync(join(journal, `${STORE_FILE}-wal`), 'old');
    expect(await problemOf(() => restoreBackup(to, journal))).toMatchObject({ code: 'store-unusable' });
    expect(await problemOf(() => restoreBackup(join(folder, 'none'), join(folder, 'x')))).toMatchObject({
      code: 'file-missing',
    });
  });

  it('takes no file that is not a whole backup of ours', async () => {
    const folder = scratchFolder();
    inStore(join(folder, 'data'), (store) => store.addTrip(newTrip({ maps: new Uint8Array(60_000) })));
    const to = join(folder, 'all.drystage');
    await backUp(join(folder, 'data'), to);
    const whole = readFileSync(to);
    const other = join(folder, 'other');
    const songs = new SqlFile(other);
    songs.script('CREATE TABLE songs (id INTEGER)');
    songs.close();
    expect(await problemOf(() => restoreBackup(other, join(folder, 'new')))).toMatchObject({
      code: 'store-unusable',
    });
    const cut = fc.asyncProperty(fc.integer({ min: 0, max: whole.length - 1 }), async (length) => {
      writeFileSync(other, whole.subarray(0, length));
      expect(await problemOf(() => restoreBackup(other, join(folder, 'new')))).toHaveProperty('remedy');
      expect(readdirSync(join(folder, 'new'))).not.toContain(STORE_FILE);
    });
    // The end of the last page alone is the cut that SQLite does not see.
    await fc.assert(cut, { numRuns: 20, examples: [[whole.length - 1]] });
  });
});
