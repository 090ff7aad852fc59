import type { Bbox } from '../../contract/common.ts';
import type { BoxedRow, ExtractTable, StoredExtract } from '../port/port.ts';
import { documentIn, type Row, readable, type SqlDatabase, textIn } from './database.ts';

/** The kinds of thing with a place. */
export type PlacedKind = 'points' | 'ground';

/** Things with a place under a spatial key, which every database has in its own way. */
export interface Places {
  add(kind: PlacedKind, id: string, rows: readonly BoxedRow[]): void;
  /** Takes away up to so many rows of each kind that an extract has; how many went. */
  drop(id: string, most: number): number;
  /** The JSON of those whose box touches one of some boxes, each once, as they were added. */
  touching(kind: PlacedKind, id: string, boxes: readonly Bbox[], most: number | null): string[];
}

export const extractOf = (row: Row): StoredExtract =>
  documentIn(row, ['id', 'name', 'fileName', 'hash', 'bytes', 'counts']);

/** Extracts with their points and ground. */
export class SqlExtractTable implements ExtractTable {
  readonly #database: SqlDatabase;
  readonly #places: Places;

  constructor(database: SqlDatabase, places: Places) {
    this.#database = database;
    this.#places = places;
  }

  all(): StoredExtract[] {
    return readable(this.#database.all('SELECT document FROM extracts WHERE whole = 1'), extractOf);
  }

  ids(): string[] {
    return this.#database.all('SELECT id FROM extracts WHERE whole = 1').map((row) => textIn(row, 'id'));
  }

  hidden(): string[] {
    return this.#database.all('SELECT id FROM extracts WHERE whole = 0').map((row) => textIn(row, 'id'));
  }

  begin(id: string): void {
    this.#database.run("INSERT INTO extracts (id, whole, document) VALUES (?, 0, '{}')", id);
  }

  addPoints(id: string, rows: readonly BoxedRow[]): void {
    this.#places.add('points', id, rows);
  }

  addGround(id: string, rows: readonly BoxedRow[]): void {
    this.#places.add('ground', id, rows);
  }

  show(extract: StoredExtract): void {
    const shown = this.#database.run(
      'UPDATE extracts SET whole = 1, document = ? WHERE id = ?',
      JSON.stringify(extract),
      extract.id,
    );
    if (shown !== 1) throw new Error(`the extract ${extract.id} was taken away while it came in`);
  }

  hide(id: string): void {
    this.#database.run('UPDATE extracts SET whole = 0 WHERE id = ?', id);
  }

  dropSome(id: string, most: number): boolean {
    if (this.#places.drop(id, most) > 0) return true;
    this.#database.run('DELETE FROM extracts WHERE id = ? AND whole = 0', id);
    return false;
  }

  pointsIn(id: string, boxes: readonly Bbox[]): string[] {
    return this.#places.touching('points', id, boxes, null);
  }

  groundIn(id: string, box: Bbox, most: number): string[] {
    return this.#places.touching('ground', id, [box], most);
  }
}
