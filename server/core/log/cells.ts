import { SURFACES, type Surface } from '../../contract/surface.ts';
import type { ColumnName, LogColumns } from './columns.ts';
import type { CsvRecord, CsvTable } from './csv.ts';
import { logFault, placeOf, quoted } from './log-fault.ts';

export interface NumberRange {
  /** Least and most; `above` when the least itself is too little. */
  above?: number;
  least?: number;
  most: number;
  unit: string;
  whole?: boolean;
}

/** Reads the cells of one table's records, each under its column, with its place in every refusal. */
export class CellReader {
  readonly #columns: LogColumns;
  readonly #decimalComma: boolean;
  readonly #mayHaveThousands: boolean;

  constructor(table: CsvTable, columns: LogColumns) {
    this.#columns = columns;
    // Only between semicolons: elsewhere a comma separates. One number with a comma makes it the log's decimal sign.
    this.#mayHaveThousands = table.separator === ';';
    this.#decimalComma =
      this.#mayHaveThousands &&
      table.records.some((record) =>
        NUMBER_COLUMNS.some((name) => /^\d+,\d+$/.test(this.text(record, name))),
      );
  }

  /** The cell, empty where the record ends before it or the log has no such column. */
  text(record: CsvRecord, name: ColumnName): string {
    const column = this.#columns.at[name];
    return column === undefined ? '' : (record.cells[column.index] ?? '');
  }

  /** A plain decimal number within its range; null for an empty cell. */
  number(record: CsvRecord, name: ColumnName, range: NumberRange): number | null {
    const text = this.text(record, name);
    if (text === '') return null;
    const refuse = (remedy: string) =>
      logFault(this.#place(record, name), quoted(text), rangeWords(range), remedy);
    const pattern = this.#decimalComma ? /^-?\d+(,\d+)?$/ : /^-?\d+(\.\d+)?$/;
    if (!pattern.test(text)) {
      throw refuse(
        this.#decimalComma
          ? 'Write plain digits with a comma before the decimals, as 1234,5'
          : 'Write plain digits with a point before the decimals, as 1234.5 (a decimal comma only between semicolons)',
      );
    }
    if (this.#mayHaveThousands && !this.#decimalComma && /^[1-9]\d{0,2}\.\d{3}$/.test(text)) {
      throw refuse(
        `It may be a whole number or one with three decimals: write ${text.replace('.', '')}, or ${text}0`,
      );
    }
    const value = Number(text.replace(',', '.'));
    if (range.whole === true && !Number.isInteger(value)) throw refuse('Correct the number');
    const isTooLittle =
      (range.above !== undefined && value <= range.above) ||
      (range.least !== undefined && value < range.least);
    if (isTooLittle || value > range.most) throw refuse('Correct the number');
    return value;
  }

  /** As `number`, but an empty cell is refused too. */
  neededNumber(record: CsvRecord, name: ColumnName, range: NumberRange): number {
    const value = this.number(record, name, range);
    if (value !== null) return value;
    throw logFault(this.#place(record, name), 'nothing', rangeWords(range), 'Fill the cell in');
  }

  /** A yes or no in the column's own words; null for an empty cell. */
  flag(
    record: CsvRecord,
    name: ColumnName,
    yes: ReadonlySet<string>,
    no: ReadonlySet<string>,
  ): boolean | null {
    const text = this.text(record, name);
    const word = text.toLowerCase();
    if (word === '') return null;
    if (yes.has(word)) return true;
    if (no.has(word)) return false;
    throw logFault(
      this.#place(record, name),
      quoted(text),
      `${[...yes].join(', ')}; or ${[...no].join(', ')}`,
      'Use one of these words',
    );
  }

  /** A surface by its word; null for an empty cell and for "unknown". */
  surface(record: CsvRecord): Surface | null {
    const text = this.text(record, 'surface');
    const word = text.toLowerCase();
    if (word === '' || word === 'unknown') return null;
    const found = SURFACES.find((surface) => surface === word);
    if (found !== undefined) return found;
    throw logFault(
      this.#place(record, 'surface'),
      quoted(text),
      `one of ${SURFACES.join(', ')}, or nothing`,
      'Use one of these words; anything else belongs under note',
    );
  }

  /** A day as YYYY-MM-DD that the calendar has. */
  date(record: CsvRecord): string {
    const text = this.text(record, 'date');
    const millis = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
    if (!Number.isNaN(millis) && new Date(millis).toISOString().startsWith(text)) return text;
    throw logFault(
      this.#place(record, 'date'),
      text === '' ? 'nothing' : quoted(text),
      'a date such as 2026-05-04',
      'Write year, month and day in that order',
    );
  }

  #place(record: CsvRecord, name: ColumnName): string {
    return placeOf(record.line, this.#columns.at[name]?.title ?? name);
  }
}

const NUMBER_COLUMNS: readonly ColumnName[] = ['odometer', 'volume', 'mass', 'people', 'days'];

function rangeWords({ above, least, most, unit, whole }: NumberRange): string {
  const from =
    above === undefined ? (least === undefined ? '' : `at least ${least} and `) : `above ${above} and `;
  return `a ${whole === true ? 'whole ' : ''}number ${from}at most ${most}, in ${unit}`;
}
