/** A value that a column may hold. */
export type Value = string | number | null | Uint8Array;
/** A row by the names of its columns. */
export type Row = Record<string, unknown>;

/** A database that takes SQL as SQLite and PostgreSQL both have it, its values as `?`. Methods throw InputProblem. */
export interface SqlDatabase {
  /** How many rows it changed. */
  run(sql: string, ...values: Value[]): number;
  one(sql: string, ...values: Value[]): Row | null;
  all(sql: string, ...values: Value[]): Row[];
  /** All or nothing; inside another one, a part of it. One at a time, whoever else has the database. */
  transaction<T>(work: () => T): T;
}

/** A column's text. */
export function textIn(row: Row, column: string): string {
  const value = row[column];
  if (typeof value !== 'string') throw new TypeError(`the column ${column} holds no text`);
  return value;
}

export function numberOf(row: Row, column: string): number {
  const value = row[column];
  if (typeof value !== 'number') throw new TypeError(`the column ${column} holds no number`);
  return value;
}

/** A column's bytes, which come in several forms. */
export function bytesIn(row: Row, column: string): Uint8Array {
  const value = row[column];
  if (value instanceof ArrayBuffer) return new Uint8Array(value);
  if (value instanceof Uint8Array) return value;
  throw new TypeError(`the column ${column} holds no bytes`);
}

/** Those rows that can be read: another program may have changed one, and the rest is none the worse for it. */
export function readable<T>(rows: readonly Row[], read: (row: Row) => T): T[] {
  return rows.flatMap((row) => {
    const value = readOrNull(row, read);
    return value === null ? [] : [value];
  });
}

/** What a row holds; null where it cannot be read. */
export function readOrNull<T>(row: Row, read: (row: Row) => T): T | null {
  try {
    return read(row);
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof TypeError) return null;
    throw error;
  }
}

/** A column's document, which has these keys. Throws SyntaxError or TypeError where it has not. */
export function documentIn<T>(row: Row, keys: readonly (keyof T & string)[]): T {
  const document: unknown = JSON.parse(textIn(row, 'document'));
  if (typeof document !== 'object' || document === null || Array.isArray(document))
    throw new TypeError('the document is none');
  for (const key of keys) if (!(key in document)) throw new TypeError(`the document has no ${key}`);
  return document as T;
}
