import type { Bbox } from '../../contract/common.ts';
import type { BoxedRow, ExtractTable, StoredExtract } from '../port/port.ts';
import { numberOf, type Row, type SqlFile, textIn } from './sql-file.ts';

/** The tables of one kind of thing with a place: what it is, and its box in an R*Tree under the same number. */
interface Placed {
  rows: 'points' | 'ground';
  boxes: 'point_boxes' | 'ground_boxes';
}
const POINTS: Placed = { rows: 'points', boxes: 'point_boxes' };
const GROUND: Placed = { rows: 'ground', boxes: 'ground_boxes' };

const extractOf = (row: Row): StoredExtract => JSON.parse(textIn(row, 'document')) as StoredExtract;

/** Extracts with their points and ground under a spatial key. */
export class SqlExtractTable implements ExtractTable {
  readonly #file: SqlFile;

  constructor(file: SqlFile) {
    this.#file = file;
  }

  all(): StoredExtract[] {
    return this.#file.all('SELECT document FROM extracts WHERE whole = 1').map(extractOf);
  }

  hidden(): string[] {
    return this.#file.all('SELECT id FROM extracts WHERE whole = 0').map((row) => textIn(row, 'id'));
  }

  begin(id: string): void {
    this.#file.run("INSERT INTO extracts (id, whole, document) VALUES (?, 0, '{}')", id);
  }

  addPoints(id: string, rows: readonly BoxedRow[]): void {
    this.#add(POINTS, id, rows);
  }

  addGround(id: string, rows: readonly BoxedRow[]): void {
    this.#add(GROUND, id, rows);
  }

  #add({ rows: table, boxes }: Placed, id: string, rows: readonly BoxedRow[]): void {
    this.#file.transaction(() => {
      for (const { box, json } of rows) {
        const [west, south, east, north] = box;
        const { number } = this.#file.one(
          `INSERT INTO ${table} (extract, json) VALUES (?, ?) RETURNING id AS number`,
          id,
          json,
        ) as { number: number };
        this.#file.run(`INSERT INTO ${boxes} VALUES (?, ?, ?, ?, ?)`, number, west, east, south, north);
      }
    });
  }

  show(extract: StoredExtract): void {
    this.#file.run(
      'UPDATE extracts SET whole = 1, document = ? WHERE id = ?',
      JSON.stringify(extract),
      extract.id,
    );
  }

  hide(id: string): void {
    this.#file.run('UPDATE extracts SET whole = 0 WHERE id = ?', id);
  }

  dropSome(id: string, most: number): boolean {
    return this.#file.transaction(() => {
      const gone = this.#drop(POINTS, id, most) + this.#drop(GROUND, id, most);
      if (gone > 0) return true;
      this.#file.run('DELETE FROM extracts WHERE id = ? AND whole = 0', id);
      return false;
    });
  }

  #drop({ rows: table, boxes }: Placed, id: string, most: number): number {
    const numbers = `SELECT id FROM ${table} WHERE extract = ? LIMIT ?`;
    this.#file.run(`DELETE FROM ${boxes} WHERE id IN (${numbers})`, id, most);
    return this.#file.run(`DELETE FROM ${table} WHERE id IN (${numbers})`, id, most);
  }

  pointsIn(id: string, boxes: readonly Bbox[]): string[] {
    const found = new Map<number, string>();
    for (const box of boxes)
      for (const row of this.#touching(POINTS, id, box, -1)) {
        found.set(numberOf(row, 'number'), textIn(row, 'json'));
      }
    return [...found].sort(([a], [b]) => a - b).map(([, json]) => json);
  }

  groundIn(id: string, box: Bbox, most: number): string[] {
    return this.#touching(GROUND, id, box, most).map((row) => textIn(row, 'json'));
  }

  /** By the boxes first, which SQLite would not choose by itself (CROSS JOIN and + hold it to that). */
  #touching({ rows: table, boxes }: Placed, id: string, box: Bbox, most: number): Row[] {
    const [west, south, east, north] = box;
    return this.#file.all(
      `SELECT ${boxes}.id AS number, json FROM ${boxes}
       CROSS JOIN ${table} ON ${table}.id = ${boxes}.id
       WHERE east >= ? AND west <= ? AND north >= ? AND south <= ? AND +extract = ? LIMIT ?`,
      west,
      east,
      south,
      north,
      id,
      most,
    );
  }
}
