import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import { FailoverDriver } from '../../server/store/failover/failover-driver.ts';
import { OverlayDriver } from '../../server/store/failover/overlay-driver.ts';
import { Store } from '../../server/store/library/store.ts';
import { openLibsql } from '../../server/store/libsql/libsql-driver.ts';
import { MemoryDriver } from '../../server/store/memory/memory-driver.ts';
import type { StoreDriver } from '../../server/store/port/port.ts';

const folders: string[] = [];
const drivers: StoreDriver[] = [];

/** A folder of its own that goes after the test. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'drystage-store-test-'));
  folders.push(folder);
  return folder;
}

/** A driver that is closed after the test. */
export function opened<D extends StoreDriver>(driver: D): D {
  drivers.push(driver);
  return driver;
}

afterEach(() => {
  for (const driver of drivers.splice(0)) driver.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** All drivers, each to be opened afresh. */
export const DRIVERS: readonly [name: string, open: () => StoreDriver][] = [
  ['a file', () => opened(openLibsql(join(scratchFolder(), 'drystage.db')))],
  ['memory', () => opened(new MemoryDriver())],
];

/** As these, and those that go on in memory where a disk takes no more; of extracts they are no other. */
export const TRIP_DRIVERS: typeof DRIVERS = [
  ...DRIVERS,
  [
    'a file that may be lost',
    () => opened(new FailoverDriver(openLibsql(join(scratchFolder(), 'drystage.db')))),
  ],
  [
    'memory on top of a file',
    () => opened(new OverlayDriver(openLibsql(join(scratchFolder(), 'drystage.db')))),
  ],
];

/** A store whose clock goes on by a second at each look. */
export function storeOf(driver: StoreDriver): Store {
  let second = 0;
  const now = () => {
    second += 1;
    return new Date(Date.UTC(2026, 4, 1, 8, 0, second)).toISOString();
  };
  return new Store(driver, { keeps: 'memory', folder: null, why: null }, now);
}
