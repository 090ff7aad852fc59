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

  add(kind: PlacedKind, id: string, rows: readonly BoxedRow[]): void {
    this.#file.transaction(() => {
      for (const { box, json } of rows) {
        const [west, south, east, north] = box;
        const { number } = this.#file.one(
          `INSERT INTO ${kind} (extract, json) VALUES (?, ?) RETURNING id AS number`,
          id,
          json,
        ) as { number: number };
        this.#file.run(`INSERT INTO ${BOXES[kind]} VALUES (?, ?, ?, ?, ?)`, number, west, east, south, north);
      }
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
