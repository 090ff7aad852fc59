import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { InputProblem, type Problem } from '../core/input/problem.ts';
import { databaseUrl, dataFolder } from './data-folder.ts';
import { FailoverDriver } from './failover/failover-driver.ts';
import { Store } from './library/store.ts';
import { FolderLock } from './libsql/folder-lock.ts';
import { type LibsqlOptions, openLibsql } from './libsql/libsql-driver.ts';
import { MemoryDriver } from './memory/memory-driver.ts';
import { openPostgres } from './postgres/postgres-driver.ts';
import { tend } from './tending/tending.ts';

/** The file in a data folder that holds all but the extracts' own files. */
export const STORE_FILE = 'drystage.db';

/** A store that lasts as long as the process; `why` says why it is none in a folder. */
export const memoryStore = (why: string | null = null): Store =>
  new Store(new MemoryDriver(), { keeps: 'memory', folder: null, why });

/** The store in a data folder, which is made where there is none. Throws InputProblem. */
export function folderStore(folder: string): Store {
  makeFolder(folder);
  return new Store(openLibsql(join(folder, STORE_FILE)), { keeps: 'folder', folder, why: null });
}

/**
 * The store in a PostgreSQL database, which other servers and commands may have open too; files of extracts are laid into
 * the folder as they are needed. Throws InputProblem.
 */
function databaseStore(url: string, folder: string): Store {
  const own = join(folder, 'database');
  makeFolder(own);
  return new Store(openPostgres(url), { keeps: 'database', folder: null, why: null }, { folder: own });
}

/** The same for a server, which tidies up as it begins. Without its database it has nothing to serve. Throws InputProblem. */
export async function serverDatabase(url: string, folder: string): Promise<Store> {
  const store = databaseStore(url, folder);
  try {
    await tend(store, true);
    return store;
  } catch (error) {
    store.close();
    throw error;
  }
}

/** The store of commands: in the database where one is set, else in the data folder. Throws InputProblem. */
export function commandStore(): Store {
  const url = databaseUrl();
  return url === null ? folderStore(dataFolder()) : databaseStore(url, dataFolder());
}

interface ServerStoreOptions extends LibsqlOptions {
  /** Told when the disk takes no more while the server runs. */
  onLost?: (trouble: Problem) => void;
  /** Told when it takes all again, and has it. */
  onFound?: () => void;
}

/**
 * The store of a server: in the folder, as long as no other server has it and it can be used; else in memory, which its
 * state says with the reason.
 */
export async function serverStore(
  folder: string,
  { onLost, onFound, ...options }: ServerStoreOptions = {},
): Promise<Store> {
  let lock: FolderLock | null = null;
  try {
    makeFolder(folder);
    lock = FolderLock.take(folder, 'server');
    if (lock === null) {
      return memoryStore(`Another server has the data folder ${folder}: what you change here is not kept`);
    }
    const disk = openLibsql(join(folder, STORE_FILE), options);
    const store = new Store(
      new FailoverDriver(disk, {
        ...(onLost === undefined ? {} : { onLost }),
        ...(onFound === undefined ? {} : { onFound }),
      }),
      { keeps: 'folder', folder, why: null },
    );
    store.whenClosed(() => lock?.release());
    await tend(store, true);
    return store;
  } catch (error) {
    lock?.release();
    if (!(error instanceof InputProblem)) throw error;
    const { came, remedy } = error.problem;
    return memoryStore(`${folder}: ${came}. What you change is not kept. ${remedy}`);
  }
}

/** Makes a data folder where there is none. Throws InputProblem. */
export function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    throw new InputProblem({
      code: 'store-unusable',
      source: folder,
      came: `a data folder that cannot be made (${code})`,
      expected: 'a folder that can be read and written',
      remedy: 'Correct its permissions, or set DRYSTAGE_DATA to another folder',
    });
  }
}
