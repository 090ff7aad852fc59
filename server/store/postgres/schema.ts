import { InputProblem } from '../../core/input/problem.ts';
import { numberOf } from '../sql/database.ts';
import type { PostgresLink } from './link.ts';

/**
 * What makes of a database of one version the next; the first begins with nothing. Never changed once given out. The
 * boxes of points and ground lie under GiST, which is an R-tree in PostgreSQL itself.
 */
const STEPS: readonly string[] = [
  // Version 1.
  `CREATE TABLE trips (
     id TEXT PRIMARY KEY, revision INTEGER NOT NULL, changed_at TEXT NOT NULL, deleted_at TEXT, document TEXT NOT NULL
   );
   CREATE TABLE routes (trip TEXT PRIMARY KEY REFERENCES trips (id), bytes BYTEA NOT NULL);
   CREATE TABLE maps (trip TEXT PRIMARY KEY REFERENCES trips (id), bytes BYTEA NOT NULL);
   CREATE TABLE changes (
     trip TEXT NOT NULL REFERENCES trips (id), seq INTEGER NOT NULL, after INTEGER, at TEXT NOT NULL,
     words TEXT NOT NULL, document TEXT NOT NULL, PRIMARY KEY (trip, seq)
   );
   CREATE TABLE rigs (name TEXT PRIMARY KEY, changed_at TEXT NOT NULL, document TEXT NOT NULL);
   CREATE TABLE extracts (id TEXT PRIMARY KEY, whole INTEGER NOT NULL, document TEXT NOT NULL);
   CREATE TABLE files (
     extract TEXT NOT NULL REFERENCES extracts (id), part INTEGER NOT NULL, bytes BYTEA NOT NULL,
     PRIMARY KEY (extract, part)
   );
   CREATE TABLE points (
     id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY, extract TEXT NOT NULL REFERENCES extracts (id),
     place BOX NOT NULL, json TEXT NOT NULL
   );
   CREATE INDEX points_of_extract ON points (extract);
   CREATE INDEX points_by_place ON points USING gist (place);
   CREATE TABLE ground (
     id BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY, extract TEXT NOT NULL REFERENCES extracts (id),
     place BOX NOT NULL, json TEXT NOT NULL
   );
   CREATE INDEX ground_of_extract ON ground (extract);
   CREATE INDEX ground_by_place ON ground USING gist (place);
   CREATE TABLE jobs (name TEXT PRIMARY KEY);
   INSERT INTO jobs VALUES ('extracts');`,
];

/** The version that this program reads and writes. */
const DATABASE_VERSION = STEPS.length;
/** What a server holds that brings a database to the present: "DRYM". */
const MIGRATION_KEY = 0x4452594d;

const problem = (code: 'store-too-new' | 'store-unusable', came: string, expected: string) =>
  new InputProblem({
    code,
    place: 'DATABASE_URL',
    came,
    expected,
    remedy:
      code === 'store-too-new'
        ? 'Use the newer program that wrote it, or another database'
        : 'Use another database or schema',
  });

/** Brings a database to the present version, all of it or nothing, one server at a time. Throws InputProblem. */
export function migrate(link: PostgresLink): void {
  link.whole(`BEGIN; SELECT pg_advisory_xact_lock(${MIGRATION_KEY})`, () => {
    const has = (table: string) => link.one('SELECT to_regclass(?) AS found', table)?.found !== null;
    if (!has('drystage')) {
      if (has('trips'))
        throw problem(
          'store-unusable',
          "another program's tables in the database",
          'one of Drystage, or an empty one',
        );
      link.run('CREATE TABLE drystage (version INTEGER NOT NULL)');
      link.run('INSERT INTO drystage VALUES (0)');
    }
    const row = link.one('SELECT version FROM drystage');
    const version = row === null ? 0 : numberOf(row, 'version');
    if (version > DATABASE_VERSION)
      throw problem(
        'store-too-new',
        `a database of version ${version}`,
        `version ${DATABASE_VERSION} at most`,
      );
    for (const step of STEPS.slice(version)) link.run(step);
    if (version < DATABASE_VERSION) link.run(`UPDATE drystage SET version = ${DATABASE_VERSION}`);
  });
}
