import type { TripChangeEntry } from '../../contract/kept.ts';
import type { StoredTrip, TripTable } from '../port/port.ts';
import {
  bytesIn,
  documentIn,
  numberOf,
  type Row,
  readable,
  readOrNull,
  type SqlDatabase,
  textIn,
} from './database.ts';

/** What of a trip stands in its document: the rest has columns of its own. */
type TripDocument = Omit<StoredTrip, 'id' | 'revision' | 'changedAt' | 'deletedAt'>;

export function tripOf(row: Row): StoredTrip {
  const document = documentIn<TripDocument>(row, ['name', 'route', 'extracts', 'rig', 'trip', 'standsAt']);
  return {
    id: textIn(row, 'id'),
    revision: numberOf(row, 'revision'),
    changedAt: textIn(row, 'changed_at'),
    deletedAt: row.deleted_at === null ? null : textIn(row, 'deleted_at'),
    ...document,
  };
}

function changeOf(row: Row): TripChangeEntry {
  const { rig, trip } = documentIn<Pick<TripChangeEntry, 'rig' | 'trip'>>(row, ['rig', 'trip']);
  return {
    seq: numberOf(row, 'seq'),
    after: row.after === null ? null : numberOf(row, 'after'),
    at: textIn(row, 'at'),
    change: textIn(row, 'words'),
    rig,
    trip,
  };
}

/** Trips with their routes, maps and changes in tables of their own: a list reads none of those. */
export class SqlTripTable implements TripTable {
  readonly #database: SqlDatabase;

  constructor(database: SqlDatabase) {
    this.#database = database;
  }

  all(): StoredTrip[] {
    return readable(this.#database.all('SELECT * FROM trips'), tripOf);
  }

  get(id: string): StoredTrip | null {
    const row = this.#database.one('SELECT * FROM trips WHERE id = ?', id);
    return row === null ? null : readOrNull(row, tripOf);
  }

  put({ id, revision, changedAt, deletedAt, ...document }: StoredTrip): void {
    const text = JSON.stringify(document satisfies TripDocument);
    this.#database.run(
      `INSERT INTO trips (id, revision, changed_at, deleted_at, document) VALUES (?, ?, ?, ?, ?)
       ON CONFLICT (id) DO UPDATE SET revision = excluded.revision, changed_at = excluded.changed_at,
         deleted_at = excluded.deleted_at, document = excluded.document`,
      id,
      revision,
      changedAt,
      deletedAt,
      text,
    );
  }

  remove(id: string): void {
    this.#database.transaction(() => {
      for (const table of ['changes', 'maps', 'routes'])
        this.#database.run(`DELETE FROM ${table} WHERE trip = ?`, id);
      this.#database.run('DELETE FROM trips WHERE id = ?', id);
    });
  }

  route(id: string): Uint8Array | null {
    const row = this.#database.one('SELECT bytes FROM routes WHERE trip = ?', id);
    return row === null ? null : bytesIn(row, 'bytes');
  }

  putRoute(id: string, bytes: Uint8Array): void {
    this.#putBytes('routes', id, bytes);
  }

  maps(id: string): Uint8Array | null {
    const row = this.#database.one('SELECT bytes FROM maps WHERE trip = ?', id);
    return row === null ? null : bytesIn(row, 'bytes');
  }

  putMaps(id: string, bytes: Uint8Array | null): void {
    if (bytes === null) this.#database.run('DELETE FROM maps WHERE trip = ?', id);
    else this.#putBytes('maps', id, bytes);
  }

  #putBytes(table: 'routes' | 'maps', id: string, bytes: Uint8Array): void {
    this.#database.run(
      `INSERT INTO ${table} (trip, bytes) VALUES (?, ?) ON CONFLICT (trip) DO UPDATE SET bytes = excluded.bytes`,
      id,
      bytes,
    );
  }

  changes(id: string): TripChangeEntry[] {
    return readable(
      this.#database.all('SELECT * FROM changes WHERE trip = ? ORDER BY seq DESC', id),
      changeOf,
    );
  }

  changeAt(id: string, seq: number): TripChangeEntry | null {
    const row = this.#database.one('SELECT * FROM changes WHERE trip = ? AND seq = ?', id, seq);
    return row === null ? null : readOrNull(row, changeOf);
  }

  lastChange(id: string): number {
    const row = this.#database.one('SELECT max(seq) AS seq FROM changes WHERE trip = ?', id);
    return row === null || row.seq === null ? -1 : numberOf(row, 'seq');
  }

  addChange(id: string, { seq, after, at, change, rig, trip }: TripChangeEntry): void {
    this.#database.run(
      'INSERT INTO changes (trip, seq, after, at, words, document) VALUES (?, ?, ?, ?, ?, ?)',
      id,
      seq,
      after,
      at,
      change,
      JSON.stringify({ rig, trip }),
    );
  }

  keepChanges(id: string, newest: number): void {
    this.#database.run(
      `DELETE FROM changes WHERE trip = ? AND seq < (
         SELECT min(seq) FROM (SELECT seq FROM changes WHERE trip = ? ORDER BY seq DESC LIMIT ?) AS newest
       )`,
      id,
      id,
      newest,
    );
  }

  clearChanges(id: string): void {
    this.#database.run('DELETE FROM changes WHERE trip = ?', id);
  }
}
