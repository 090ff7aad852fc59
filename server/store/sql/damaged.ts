import { type Row, readOrNull, type SqlDatabase } from './database.ts';
import { extractOf } from './extract-table.ts';
import { rigOf } from './rig-table.ts';
import { tripOf } from './trip-table.ts';

/** Names of the rows that cannot be read. */
export function damagedIn(database: SqlDatabase): string[] {
  const named = (what: string, sql: string, read: (row: Row) => unknown): string[] =>
    database.all(sql).flatMap((row) => (readOrNull(row, read) === null ? [`${what} ${row.called}`] : []));
  return [
    ...named('trip', 'SELECT *, id AS called FROM trips', tripOf),
    ...named('rig', 'SELECT *, name AS called FROM rigs', rigOf),
    ...named('extract', 'SELECT *, id AS called FROM extracts WHERE whole = 1', extractOf),
  ];
}
