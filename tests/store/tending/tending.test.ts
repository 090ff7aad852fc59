import { existsSync, mkdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { Store } from '../../../server/store/library/store.ts';
import { folderStore } from '../../../server/store/open-store.ts';
import { sweepTempFolders } from '../../../server/store/tending/temp-folders.ts';
import { tend, tendHourly } from '../../../server/store/tending/tending.ts';
import { describeDrivers, scratchFolder, TRIP_DRIVERS } from '../drivers.ts';
import { newTrip } from '../new-trip.ts';

const DAY_MS = 24 * 3_600_000;

describeDrivers('trips deleted in', TRIP_DRIVERS, (open) => {
  it('go for good after 30 days', () => {
    const driver = open();
    let day = 0;
    const now = () => new Date(day * DAY_MS).toISOString();
    const store = new Store(driver, { keeps: 'memory', folder: null, why: null }, { now });
    for (const id of ['old', 'young', 'whole']) store.addTrip(newTrip({ id }));
    store.deleteTrip('old', true);
    day = 10;
    store.deleteTrip('young', true);
    day = 30;
    expect(store.purge()).toBe(0);
    day = 31;
    expect(store.purge()).toBe(1);
    expect(store.trip('old')).toBeNull();
    expect([driver.trips.route('old'), driver.trips.maps('old'), store.changes('old')]).toEqual([
      null,
      null,
      [],
    ]);
    expect(store.trips(true).map(({ id }) => id)).toEqual(['young']);
    expect(store.deleteTrip('young', false)?.deletedAt).toBeNull();
    expect(
      store
        .trips()
        .map(({ id }) => id)
        .sort(),
    ).toEqual(['whole', 'young']);
  });
});

it('what ended processes left in the folder for temporary files goes, and nothing else', async () => {
  const folder = scratchFolder();
  const old = new Date(Date.now() - 2 * 3_600_000);
  const made = (name: string, at: Date) => {
    mkdirSync(join(folder, name));
    writeFileSync(join(folder, name, 'route'), 'x');
    utimesSync(join(folder, name), at, at);
    return name;
  };
  const nobody = 4_194_305;
  const gone = [made(`drystage-${nobody}-abc`, old), made(`drystage-memory-${nobody}-abc`, old)];
  const left = [
    made(`drystage-${process.pid}-abc`, old),
    made(`drystage-${nobody}-young`, new Date()),
    made('drystage-store-test-x', old),
    made(`other-${nobody}-abc`, old),
  ];
  await sweepTempFolders(folder);
  expect(gone.filter((name) => existsSync(join(folder, name)))).toEqual([]);
  expect(left.filter((name) => !existsSync(join(folder, name)))).toEqual([]);
  await sweepTempFolders(join(folder, 'nowhere'));
});

it('a file that comes in is left while the server runs, and goes once it is old', async () => {
  const store = folderStore(scratchFolder());
  const path = store.extracts.incoming();
  writeFileSync(path, 'coming');
  await tend(store, false);
  expect(existsSync(path)).toBe(true);
  const old = new Date(Date.now() - 2 * 3_600_000);
  utimesSync(path, old, old);
  await tend(store, false);
  expect(existsSync(path)).toBe(false);
  writeFileSync(path, 'of a process that ended');
  await tend(store, true);
  expect(existsSync(path)).toBe(false);
  store.close();
});

it('a store is tended again and again until it is told to stop, and what goes wrong is told', async () => {
  const store = folderStore(scratchFolder());
  const purge = vi.spyOn(store, 'purge');
  const faults: string[] = [];
  const stop = tendHourly(store, (text) => faults.push(text), 5);
  await vi.waitFor(() => expect(purge.mock.calls.length).toBeGreaterThan(1));
  purge.mockImplementation(() => {
    throw new Error('no more');
  });
  await vi.waitFor(() => expect(faults).toContain('no more'));
  stop();
  const { length } = purge.mock.calls;
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(purge.mock.calls.length).toBe(length);
  store.close();
});
