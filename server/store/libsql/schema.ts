import { InputProblem } from '../../core/input/problem.ts';
import { numberOf } from '../sql/database.ts';
import type { SqlFile } from './sql-file.ts';

/** What makes of a store of one version the next; the first begins with nothing. Never changed once given out. */
const STEPS: readonly string[] = [
  // Version 1.
  `CREATE TABLE trips (
     id TEXT PRIMARY KEY, revision INTEGER NOT NULL, changed_at TEXT NOT NULL, deleted_at TEXT, document TEXT NOT NULL
   ) STRICT;
   CREATE TABLE routes (trip TEXT PRIMARY KEY REFERENCES trips (id), bytes BLOB NOT NULL) STRICT;
   CREATE TABLE maps (trip TEXT PRIMARY KEY REFERENCES trips (id), bytes BLOB NOT NULL) STRICT;
   CREATE TABLE changes (
     trip TEXT NOT NULL REFERENCES trips (id), seq INTEGER NOT NULL, at TEXT NOT NULL, words TEXT NOT NULL,
     document TEXT NOT NULL, PRIMARY KEY (trip, seq)
   ) STRICT, WITHOUT ROWID;
   CREATE TABLE rigs (name TEXT PRIMARY KEY, changed_at TEXT NOT NULL, document TEXT NOT NULL) STRICT;
   CREATE TABLE extracts (id TEXT PRIMARY KEY, whole INTEGER NOT NULL, document TEXT NOT NULL) STRICT;
   CREATE TABLE points (id INTEGER PRIMARY KEY, extract TEXT NOT NULL, json TEXT NOT NULL) STRICT;
   CREATE INDEX points_of_extract ON points (extract);
   CREATE VIRTUAL TABLE point_boxes USING rtree (id, west, east, south, north);
   CREATE TABLE ground (id INTEGER PRIMARY KEY, extract TEXT NOT NULL, json TEXT NOT NULL) STRICT;
   CREATE INDEX ground_of_extract ON ground (extract);
   CREATE VIRTUAL TABLE ground_boxes USING rtree (id, west, east, south, north);`,
  // Version 2: which change each one was made after. Before it there was but one line of them.
  `ALTER TABLE changes ADD COLUMN after INTEGER;
   UPDATE changes SET after = (
     SELECT max(earlier.seq) FROM changes AS earlier WHERE earlier.trip = changes.trip AND earlier.seq < changes.seq
   );`,
];

/** The version that this program reads and writes. */
export const STORE_VERSION = STEPS.length;
/** Tells a store of ours from another program's database: "DRYS". */
const APPLICATION_ID = 0x44525953;

const pragma = (file: SqlFile, name: string): number => {
  const row = file.one(`PRAGMA ${name}`);
  return row === null ? 0 : numberOf(row, name);
};

function tooNew(version: number): InputProblem {
  return new InputProblem({
    code: 'store-too-new',
    came: `a data folder of version ${version}`,
    expected: `version ${STORE_VERSION} at most`,
    remedy: 'Use the newer program that wrote it, or set DRYSTAGE_DATA to another folder',
  });
}

function foreign(): InputProblem {
  return new InputProblem({
    code: 'store-unusable',
    came: "another program's database in the data folder",
    expected: 'a folder of Drystage, or an empty one',
    remedy: 'Set DRYSTAGE_DATA to another folder',
  });
}

/** Throws InputProblem for another program's database and for a store of a newer version. */
export function requireStore(file: SqlFile): void {
  if (pragma(file, 'application_id') !== APPLICATION_ID) throw foreign();
  const version = pragma(file, 'user_version');
  if (version > STORE_VERSION) throw tooNew(version);
}

/** Brings a store to the present version, step by step; each step is whole or has not happened. Throws InputProblem. */
export function migrate(file: SqlFile, to: number = STORE_VERSION): void {
  const isEmpty = file.one('SELECT name FROM sqlite_master') === null;
  if (!isEmpty) requireStore(file);
  for (;;) {
    const from = pragma(file, 'user_version');
    if (from >= to) return;
    file.transaction(() => {
      // Another process may have been quicker.
      if (pragma(file, 'user_version') !== from) return;
      file.script(STEPS[from] ?? '');
      file.script(`PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = ${from + 1}`);
    });
  }
}
