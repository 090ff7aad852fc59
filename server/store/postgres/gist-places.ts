import type { Bbox } from '../../contract/common.ts';
import type { BoxedRow } from '../port/port.ts';
import { textIn } from '../sql/database.ts';
import type { PlacedKind, Places } from '../sql/extract-table.ts';
import type { PostgresLink } from './link.ts';

/** Whose rows go with an extract; files by their parts. */
const TABLES: readonly [table: string, key: string][] = [
  ['points', 'id'],
  ['ground', 'id'],
  ['files', 'part'],
];

/** Numbers as PostgreSQL writes an array. */
const array = (numbers: readonly number[]): string => `{${numbers.join()}}`;
/** The sides of boxes, each as an array of its own. */
const sides = (boxes: readonly Bbox[]): string[] =>
  ([0, 1, 2, 3] as const).map((side) => array(boxes.map((box) => box[side])));

const SIDES = '?::float8[], ?::float8[], ?::float8[], ?::float8[]';

/** Things with a place by a GiST index of their boxes. */
export class GistPlaces implements Places {
  readonly #link: PostgresLink;

  constructor(link: PostgresLink) {
    this.#link = link;
  }

  add(kind: PlacedKind, id: string, rows: readonly BoxedRow[]): void {
    this.#link.run(
      `INSERT INTO ${kind} (extract, place, json)
       SELECT ?, box(point(w, s), point(e, n)), json #>> '{}'
       FROM unnest(${SIDES}) WITH ORDINALITY AS boxes (w, s, e, n, number)
       JOIN json_array_elements(?::json) WITH ORDINALITY AS texts (json, number) USING (number) ORDER BY number`,
      id,
      ...sides(rows.map(({ box }) => box)),
      JSON.stringify(rows.map(({ json }) => json)),
    );
  }

  drop(id: string, most: number): number {
    return TABLES.reduce((gone, [table, key]) => {
      const some = `SELECT ${key} FROM ${table} WHERE extract = ? LIMIT ?`;
      const sql = `DELETE FROM ${table} WHERE extract = ? AND ${key} IN (${some})`;
      return gone + this.#link.run(sql, id, id, most);
    }, 0);
  }

  touching(kind: PlacedKind, id: string, boxes: readonly Bbox[], most: number | null): string[] {
    if (boxes.length === 0) return [];
    const rows = this.#link.all(
      `SELECT json FROM ${kind} WHERE id IN (
         SELECT ${kind}.id FROM unnest(${SIDES}) AS boxes (w, s, e, n)
         JOIN ${kind} ON place && box(point(w, s), point(e, n)) WHERE extract = ?
       ) ORDER BY id LIMIT ?`,
      ...sides(boxes),
      id,
      most,
    );
    return rows.map((row) => textIn(row, 'json'));
  }
}
