/** What a row can be found by. */
export interface Findable {
  readonly text: string;
  /** Along the route, in the reader's unit of distance; one place has both alike. */
  readonly from: number;
  readonly to: number;
}

/** How the rows of a long table are found. */
export interface FindBy<Row> {
  readonly of: (row: Row) => Findable;
  /** The reader's unit of distance. */
  readonly unit: string;
}

/** Which rows of a long table are shown at first, and what is said of the others. */
export interface Matter<Row> {
  /** "Trouble and the longest" */
  readonly words: string;
  readonly of: (row: Row) => boolean;
  /** Which of two of them comes first; in the table's own order where left out. */
  readonly order?: (a: Row, b: Row) => number;
  /** "and 256 more, all enough" */
  readonly rest: (count: string) => string;
}

/** A shorter table is shown whole (ours). */
export const MANY_ROWS = 12;

/** Whether leaving rows out helps: the table is long, and some but not all of it matters. */
export function isWorthNarrowing<Row>(rows: readonly Row[], matter: Matter<Row> | undefined): boolean {
  if (matter === undefined || rows.length <= MANY_ROWS) return false;
  const count = rows.filter(matter.of).length;
  return count > 0 && count < rows.length;
}

const NUMBER = /^\d{1,5}([.,]\d{1,3})?$/;

/**
 * Rows that a typed word or place finds, in their order: by a part of their text, or, for a number, those that reach over
 * that place of the route; where none does, the nearest one. Nothing typed finds all.
 */
export function found<Row>(rows: readonly Row[], typed: string, by: (row: Row) => Findable): readonly Row[] {
  const wish = typed.trim().toLocaleLowerCase();
  if (wish === '') return rows;
  if (!NUMBER.test(wish)) return rows.filter((row) => by(row).text.toLocaleLowerCase().includes(wish));
  const place = Number(wish.replace(',', '.'));
  const off = (row: Row): number => {
    const { from, to } = by(row);
    return Math.max(from - place, place - to, 0);
  };
  const offs = rows.map(off);
  const nearest = offs.reduce((least, each) => Math.min(least, each), Number.POSITIVE_INFINITY);
  return rows.filter((_, index) => offs[index] === nearest);
}
