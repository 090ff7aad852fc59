import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, inject } from 'vitest';
import { FailoverDriver } from '../../server/store/failover/failover-driver.ts';
import { OverlayDriver } from '../../server/store/failover/overlay-driver.ts';
import { Store } from '../../server/store/library/store.ts';
import { openLibsql } from '../../server/store/libsql/libsql-driver.ts';
import { MemoryDriver } from '../../server/store/memory/memory-driver.ts';
import type { StoreDriver } from '../../server/store/port/port.ts';
import { PostgresLink } from '../../server/store/postgres/link.ts';
import { openPostgres } from '../../server/store/postgres/postgres-driver.ts';
import { POSTGRES_MARK } from '../helpers/postgres.ts';

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

/** The PostgreSQL of this run, or why there is none; of files outside of tests/store nobody asks. */
const postgres = inject('postgres') ?? { why: 'these tests are not among those that it is started for' };

/** The address of a schema of its own in the database of this run: as good as an empty database, and quicker. */
export function freshSchema(): string {
  if ('why' in postgres) throw new Error(postgres.why);
  const name = `s${randomUUID().replaceAll('-', '')}`;
  const link = new PostgresLink(postgres.url);
  link.run(`CREATE SCHEMA ${name}`);
  link.close();
  return `${postgres.url}&options=${encodeURIComponent(`-c search_path=${name}`)}`;
}

/** A suite that needs PostgreSQL: skipped where there is none, which the closing line of the run says with the reason. */
export function describePostgres(name: string, body: () => void): void {
  if ('why' in postgres) describe.skip(`${POSTGRES_MARK} ${name} (${postgres.why})`, body);
  else describe(`${POSTGRES_MARK} ${name}`, body);
}

/** All drivers, each to be opened afresh. */
export const DRIVERS: readonly [name: string, open: () => StoreDriver][] = [
  ['a file', () => opened(openLibsql(join(scratchFolder(), 'drystage.db')))],
  ['memory', () => opened(new MemoryDriver())],
  ['PostgreSQL', () => opened(openPostgres(freshSchema()))],
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

/** One suite for several drivers. */
export function describeDrivers(
  name: string,
  drivers: typeof DRIVERS,
  body: (open: () => StoreDriver) => void,
): void {
  for (const [driver, open] of drivers) {
    const suite = driver === 'PostgreSQL' ? describePostgres : describe;
    suite(`${name} ${driver}`, () => body(open));
  }
}

/** A store whose clock goes on by a second at each look. */
export function storeOf(driver: StoreDriver): Store {
  let second = 0;
  const now = () => {
    second += 1;
    return new Date(Date.UTC(2026, 4, 1, 8, 0, second)).toISOString();
  };
  return new Store(driver, { keeps: 'memory', folder: null, why: null }, { now });
}
