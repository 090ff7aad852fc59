import { dirname } from 'node:path';
import type { StoreDriver } from '../port/port.ts';
import { damagedIn } from '../sql/damaged.ts';
import { SqlExtractTable } from '../sql/extract-table.ts';
import { rigTable } from '../sql/rig-table.ts';
import { SqlTripTable } from '../sql/trip-table.ts';
import { FolderLock } from './folder-lock.ts';
import { RtreePlaces } from './rtree-places.ts';
import { migrate } from './schema.ts';
import { SqlFile } from './sql-file.ts';

/** What tests ask of a file beside its path. */
export interface LibsqlOptions {
  /** The disk seems full from so many pages (4 KB each) on. */
  mostPages?: number;
  /** Called before each write once the store is open; what it throws comes as of the library. */
  onWrite?: (sql: string) => void;
}

/**
 * Keeps all in one file of SQLite. A change is on the disk when its method has returned, whatever becomes of the process
 * or the machine then. Throws InputProblem: `store-unusable`, `store-full`, `store-too-new`.
 */
export function openLibsql(path: string, { mostPages, onWrite }: LibsqlOptions = {}): StoreDriver {
  let isOpen = false;
  const file = new SqlFile(path, undefined, (sql) => isOpen && onWrite?.(sql));
  try {
    file.script('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON');
    if (mostPages !== undefined) file.script(`PRAGMA max_page_count = ${mostPages}`);
    migrate(file);
    isOpen = true;
  } catch (error) {
    file.close();
    throw error;
  }
  return {
    trips: new SqlTripTable(file),
    rigs: rigTable(file),
    extracts: new SqlExtractTable(file, new RtreePlaces(file)),
    transaction: (work) => file.transaction(work),
    claim: (job) => FolderLock.take(dirname(path), job),
    damaged: () => damagedIn(file),
    close: () => file.close(),
  };
}
