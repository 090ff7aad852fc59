import type { Bbox } from '../../contract/common.ts';
import type { BoxedRow } from '../port/port.ts';
import { numberOf, textIn } from '../sql/database.ts';
import type { PlacedKind, Places } from '../sql/extract-table.ts';
import type { SqlFile } from './sql-file.ts';

/** The R*Tree with the boxes of a kind of thing, each under the number of its row. */
const BOXES = { points: 'point_boxes', ground: 'ground_boxes' } as const;
const KINDS: readonly PlacedKind[] = ['points', 'ground'];

/** Things with a place by an R*Tree of their boxes. */
export class RtreePlaces implements Places {
  readonly #file: SqlFile;

  constructor(file: SqlFile) {
    this.#file = file;
  }

  /** Each table by one statement, whose rows SQLite takes out of JSON itself: a call for each row costs three times that. */
  add(kind: PlacedKind, id: string, rows: readonly BoxedRow[]): void {
    this.#file.transaction(() => {
      const last = this.#file.one(`SELECT coalesce(max(id), 0) AS number FROM ${kind}`);
      const first = (last === null ? 0 : numberOf(last, 'number')) + 1;
      this.#file.run(
        `INSERT INTO ${kind} (id, extract, json) SELECT ? + key, ?, value FROM json_each(?)`,
        first,
        id,
        JSON.stringify(rows.map(({ json }) => json)),
      );
      this.#file.run(
        `INSERT INTO ${BOXES[kind]} (id, west, south, east, north)
         SELECT ? + key, value ->> 0, value ->> 1, value ->> 2, value ->> 3 FROM json_each(?)`,
        first,
        JSON.stringify(rows.map(({ box }) => box)),
      );
    });
  }

  drop(id: string, most: number): number {
    return this.#file.transaction(() =>
      KINDS.reduce((gone, kind) => {
        const numbers = `SELECT id FROM ${kind} WHERE extract = ? LIMIT ?`;
        this.#file.run(`DELETE FROM ${BOXES[kind]} WHERE id IN (${numbers})`, id, most);
        return gone + this.#file.run(`DELETE FROM ${kind} WHERE id IN (${numbers})`, id, most);
      }, 0),
    );
  }

  touching(kind: PlacedKind, id: string, boxes: readonly Bbox[], most: number | null): string[] {
    const found = new Map<number, string>();
    for (const [west, south, east, north] of boxes) {
      // By the boxes first, which SQLite would not choose by itself (CROSS JOIN and + hold it to that).
      const rows = this.#file.all(
        `SELECT ${BOXES[kind]}.id AS number, json FROM ${BOXES[kind]}
         CROSS JOIN ${kind} ON ${kind}.id = ${BOXES[kind]}.id
         WHERE east >= ? AND west <= ? AND north >= ? AND south <= ? AND +extract = ? LIMIT ?`,
        ...[west, east, south, north],
        id,
        most ?? -1,
      );
      for (const row of rows) found.set(numberOf(row, 'number'), textIn(row, 'json'));
    }
    return [...found].sort(([a], [b]) => a - b).map(([, json]) => json);
  }
}
