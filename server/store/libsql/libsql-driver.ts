import type { KeptRig } from '../../contract/kept.ts';
import type { RigTable, StoreDriver } from '../port/port.ts';
import { SqlExtractTable } from './extract-table.ts';
import { migrate } from './schema.ts';
import { type Row, SqlFile, textIn } from './sql-file.ts';
import { SqlTripTable } from './trip-table.ts';

const rigOf = (row: Row): KeptRig => ({
  name: textIn(row, 'name'),
  changedAt: textIn(row, 'changed_at'),
  rig: JSON.parse(textIn(row, 'document')) as KeptRig['rig'],
});

const rigTable = (file: SqlFile): RigTable => ({
  all: () => file.all('SELECT * FROM rigs').map(rigOf),
  put: ({ name, changedAt, rig }) =>
    void file.run(
      'INSERT OR REPLACE INTO rigs (name, changed_at, document) VALUES (?, ?, ?)',
      name,
      changedAt,
      JSON.stringify(rig),
    ),
  remove: (name) => file.run('DELETE FROM rigs WHERE name = ?', name) > 0,
});

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
    extracts: new SqlExtractTable(file),
    transaction: (work) => file.transaction(work),
    close: () => file.close(),
  };
}
