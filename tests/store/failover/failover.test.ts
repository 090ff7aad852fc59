import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import type { Problem } from '../../../server/core/input/problem.ts';
import { buildApp } from '../../../server/http/app.ts';
import { FailoverDriver } from '../../../server/store/failover/failover-driver.ts';
import { Store } from '../../../server/store/library/store.ts';
import { openLibsql } from '../../../server/store/libsql/libsql-driver.ts';
import { folderStore, STORE_FILE, serverStore } from '../../../server/store/open-store.ts';
import { scratchFolder } from '../drivers.ts';
import { newTrip, RIG } from '../new-trip.ts';

/** As the library throws it. */
const sqlError = (code: string) => Object.assign(new Error(`${code}: by the test`), { code });

const stores: Store[] = [];
afterEach(() => {
  for (const store of stores.splice(0)) store.close();
});

/** A disk that takes so many writes, and then refuses each in the same way. */
class Disk {
  readonly folder = scratchFolder();
  readonly lost: Problem[] = [];
  writes = 0;
  failsFrom = Number.POSITIVE_INFINITY;
  code = 'SQLITE_FULL';
  /** The time, which stands still. */
  ms = 0;

  readonly #options = {
    onLost: (trouble: Problem) => void this.lost.push(trouble),
    onWrite: (sql: string) => {
      if (sql === 'ROLLBACK') return;
      this.writes += 1;
      if (this.writes >= this.failsFrom) throw sqlError(this.code);
    },
  };

  /** As a server has it, without its lock and sweeping. */
  open(): Store {
    const { onLost, ...options } = this.#options;
    const driver = new FailoverDriver(openLibsql(join(this.folder, STORE_FILE), options), {
      onLost,
      onFound: () => void this.lost.splice(0),
      clock: () => this.ms,
    });
    const store = new Store(driver, { keeps: 'folder', folder: this.folder, why: null });
    stores.push(store);
    return store;
  }

  serve(): Promise<Store> {
    return serverStore(this.folder, this.#options);
  }

  /** All that lies on it. */
  content(): unknown {
    stores.splice(0).map((store) => store.close());
    const store = folderStore(this.folder);
    try {
      return contentOf(store);
    } finally {
      store.close();
    }
  }
}

function contentOf(store: Store): unknown {
  const trips = [...store.trips(), ...store.trips(true)].sort((a, b) => (a.id < b.id ? -1 : 1));
  return {
    rigs: store.rigs().map(({ changedAt: _, ...rig }) => rig),
    trips: trips.map(({ createdAt: _c, changedAt: _a, deletedAt, ...trip }) => ({
      ...trip,
      isDeleted: deletedAt !== null,
      bytes: [...(store.driver.trips.route(trip.id) ?? [])],
      maps: [...(store.driver.trips.maps(trip.id) ?? [])],
      changes: store.changes(trip.id).map(({ at: _t, ...change }) => change),
    })),
  };
}

const revision = (store: Store, id: string) => store.trip(id)?.revision ?? 0;
const RESULTS = {
  at: '2026-05-01T08:00:00.000Z',
  lengthKm: 1,
  fuel: { verdict: 'short' as const, shares: [], verdicts: [] },
  water: { verdict: 'short' as const, shares: [], verdicts: [] },
};

/** Every kind of write that a store has, one after the other. */
const STEPS: [string, (store: Store) => void][] = [
  ['add', (store) => void store.addTrip(newTrip({ id: 'a' }))],
  ['add another', (store) => void store.addTrip(newTrip({ id: 'b', maps: null }))],
  [
    'change',
    (store) =>
      void store.changeTrip('a', revision(store, 'a'), { rig: RIG, trip: { corridorKm: 9 }, change: 'Nine' }),
  ],
  ['stand', (store) => void store.standTrip('a', revision(store, 'a'), 0)],
  ['name', (store) => void store.nameTrip('a', revision(store, 'a'), { name: 'Other' })],
  [
    'map',
    (store) => void store.mapTrip('a', revision(store, 'a'), { bytes: Uint8Array.of(4), extracts: [] }),
  ],
  [
    'results',
    (store) => store.noteResults('b', { rig: RIG, trip: { corridorKm: 5 }, mapsRevision: 1 }, RESULTS),
  ],
  ['delete', (store) => void store.deleteTrip('b', true)],
  ['restore', (store) => void store.deleteTrip('b', false)],
  ['reset', (store) => void store.resetTrip('b', newTrip({ maps: Uint8Array.of(7) }))],
  ['keep a rig', (store) => void store.putRig('Wagon', RIG)],
  ['keep another', (store) => void store.putRig('Van', RIG)],
  ['forget a rig', (store) => void store.removeRig('Wagon')],
  ['take away', (store) => store.driver.trips.remove('b')],
];

/** What is there after each step, and how many writes it took until then. */
function healthyRun() {
  const disk = new Disk();
  const store = disk.open();
  const after: { content: unknown; writes: number }[] = [{ content: contentOf(store), writes: disk.writes }];
  for (const [, step] of STEPS) {
    step(store);
    after.push({ content: contentOf(store), writes: disk.writes });
  }
  return after;
}

describe.each([
  ['SQLITE_FULL', 'store-full', 'no room left on the disk'],
  ['SQLITE_READONLY', 'store-unusable', 'a data folder that may not be written'],
])('a disk that answers %s from any write on', (code, problem, words) => {
  it('is left as it was, and all goes on in memory and says so', { tags: 'slow' }, () => {
    const healthy = healthyRun();
    const last = healthy.at(-1);
    const all = last?.writes ?? 0;
    expect(all).toBeGreaterThan(30);
    for (let failsFrom = 1; failsFrom <= all; failsFrom += 1) {
      const disk = Object.assign(new Disk(), { failsFrom, code });
      const store = disk.open();
      expect(store.state.keeps).toBe('folder');
      for (const [index, [name, step]] of STEPS.entries()) {
        step(store);
        expect(contentOf(store), `${name}, write ${failsFrom}`).toEqual(healthy[index + 1]?.content);
      }
      expect(disk.lost).toMatchObject([{ code: problem }]);
      expect(store.state).toMatchObject({ keeps: 'memory', folder: disk.folder });
      expect(store.state.why).toContain(words);
      // What was done before is there, and nothing of what came after.
      const before = healthy.findLast(({ writes }) => writes < failsFrom);
      expect(disk.content(), `write ${failsFrom}`).toEqual(before?.content);
    }
  });
});

it('a disk that another process keeps busy is not given up', () => {
  const disk = Object.assign(new Disk(), { failsFrom: 1, code: 'SQLITE_BUSY' });
  const store = disk.open();
  expect(() => store.putRig('Wagon', RIG)).toThrow(/keeps busy/);
  disk.failsFrom = Number.POSITIVE_INFINITY;
  store.putRig('Wagon', RIG);
  expect([store.state.keeps, disk.lost]).toEqual(['folder', []]);
});

it('a fault of the program is none of the disk', () => {
  const disk = new Disk();
  const store = disk.open();
  expect(() =>
    store.driver.transaction(() => {
      store.putRig('Wagon', RIG);
      throw new TypeError('a fault');
    }),
  ).toThrow('a fault');
  expect([store.rigs(), store.state.keeps]).toEqual([[], 'folder']);
});

it('a server whose disk fills up answers on, tells it with each write, and lists it', {
  tags: 'slow',
}, async () => {
  const disk = new Disk();
  const store = await disk.serve();
  const faults: string[] = [];
  const app = await buildApp({ store, webFolder: '/nowhere', onFault: (text) => faults.push(text) });
  const rig = (name: string) =>
    app.inject({ method: 'PUT', url: `/api/rigs/${name}`, payload: { rig: RIG } });
  const copied = async () => app.inject({ method: 'POST', url: '/api/trips/demo/duplicate', payload: {} });
  expect((await rig('Wagon')).headers['drystage-keeps']).toBe('folder');
  const before = (await copied()).json();
  disk.failsFrom = 1;
  const after = await copied();
  expect([after.statusCode, after.headers['drystage-keeps']]).toEqual([201, 'memory']);
  const { trips, store: state } = (await app.inject('/api/trips')).json();
  expect(trips.map(({ id }: { id: string }) => id).sort()).toEqual(
    ['demo', before.id, after.json().id].sort(),
  );
  expect(state).toMatchObject({ keeps: 'memory', why: expect.stringContaining('no room left') });
  expect((await rig('Van')).statusCode).toBe(200);
  expect((await app.inject(`/api/trips/${before.id}/changes`)).statusCode).toBe(200);
  await app.close();
  expect(faults).toEqual([]);
  expect(disk.content()).toMatchObject({ rigs: [{ name: 'Wagon' }], trips: [{}, {}] });
});

it('an extract is refused with the name of the trouble where its disk is full', {
  tags: 'slow',
}, async () => {
  const disk = new Disk();
  const store = await disk.serve();
  const app = await buildApp({ store, webFolder: '/nowhere' });
  disk.failsFrom = 1;
  const form =
    '--x\r\nContent-Disposition: form-data; name="extract"; filename="a.osm"\r\n\r\n<osm/>\r\n--x--\r\n';
  const reply = await app.inject({
    method: 'POST',
    url: '/api/extracts',
    payload: form,
    headers: { 'content-type': 'multipart/form-data; boundary=x' },
  });
  expect([reply.statusCode, reply.json().code]).toEqual([507, 'store-full']);
  expect((await app.inject('/api/extracts')).json().extracts).toEqual([]);
  await app.close();
});

describe('a disk that takes writes again', () => {
  /** All but the first steps in memory; the disk is well again after them. */
  function lostAfter(steps: number): { disk: Disk; store: Store } {
    const disk = new Disk();
    const store = disk.open();
    for (const [, step] of STEPS.slice(0, steps)) step(store);
    disk.failsFrom = 1;
    for (const [, step] of STEPS.slice(steps)) step(store);
    expect(store.state.keeps).toBe('memory');
    disk.failsFrom = Number.POSITIVE_INFINITY;
    return { disk, store };
  }

  it('has all that went on meanwhile, whenever it was lost, and says so', { tags: 'slow' }, () => {
    const healthy = healthyRun().at(-1)?.content;
    for (let steps = 0; steps < STEPS.length - 1; steps += 1) {
      const { disk, store } = lostAfter(steps);
      store.driver.tryDisk?.();
      expect([store.state.keeps, store.state.why, disk.lost]).toEqual(['folder', null, []]);
      expect(contentOf(store), `${steps} steps`).toEqual(healthy);
      expect(disk.content(), `${steps} steps`).toEqual(healthy);
    }
  });

  it('is tried before a write, ten seconds after the last try, and when the store is closed', () => {
    const { disk, store } = lostAfter(4);
    const writes = disk.writes;
    store.putRig('Early', RIG);
    expect([store.state.keeps, disk.writes]).toEqual(['memory', writes]);
    disk.ms += 10_000;
    store.putRig('Late', RIG);
    expect(store.state.keeps).toBe('folder');
    expect(disk.content()).toMatchObject({ rigs: [{ name: 'Early' }, { name: 'Late' }, { name: 'Van' }] });
    const closed = lostAfter(4);
    expect(closed.disk.content()).toEqual(healthyRun().at(-1)?.content);
  });

  it('that fails again in the midst of it is as it was, and nothing is lost in memory', {
    tags: 'slow',
  }, () => {
    const healthy = healthyRun().at(-1)?.content;
    for (let more = 1; more < 12; more += 1) {
      const { disk, store } = lostAfter(3);
      disk.failsFrom = disk.writes + more;
      store.driver.tryDisk?.();
      if (store.state.keeps === 'folder') break;
      expect(contentOf(store), `write ${more}`).toEqual(healthy);
      disk.failsFrom = Number.POSITIVE_INFINITY;
      store.driver.tryDisk?.();
      expect(disk.content(), `write ${more}`).toEqual(healthy);
    }
  });

  it('keeps what another process changed on it meanwhile, and has ours beside it', () => {
    const disk = new Disk();
    const store = disk.open();
    store.addTrip(newTrip({ id: 'a' }));
    store.addTrip(newTrip({ id: 'b' }));
    store.addTrip(newTrip({ id: 'c' }));
    store.putRig('Wagon', RIG);
    disk.failsFrom = 1;
    const name = (of: Store, id: string, words: string) =>
      void of.nameTrip(id, revision(of, id), { name: words });
    name(store, 'a', 'ours');
    name(store, 'b', 'ours alone');
    store.driver.trips.remove('c');
    store.putRig('Wagon', { ...RIG, name: 'ours' });
    const other = folderStore(disk.folder);
    name(other, 'a', 'theirs');
    name(other, 'c', 'theirs');
    other.putRig('Wagon', { ...RIG, name: 'theirs' });
    other.close();
    disk.failsFrom = Number.POSITIVE_INFINITY;
    store.driver.tryDisk?.();
    expect(store.state.keeps).toBe('folder');
    expect(
      store
        .trips()
        .map((trip) => trip.name)
        .sort(),
    ).toEqual(['ours (2)', 'ours alone', 'theirs', 'theirs']);
    expect(store.trip('a')?.name).toBe('theirs');
    expect(
      store
        .rigs()
        .map((rig) => [rig.name, rig.rig.name])
        .sort(),
    ).toEqual([
      ['Wagon (2)', 'ours'],
      ['Wagon', 'theirs'],
    ]);
    const copy = store.trips().find((trip) => trip.name === 'ours (2)');
    expect(store.driver.trips.route(copy?.id ?? '')).toEqual(store.driver.trips.route('a'));
  });
});
