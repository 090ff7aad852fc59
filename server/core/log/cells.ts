import { SURFACES, type Surface } from '../../contract/surface.ts';
import type { LogPlace, NumberRange } from '../phrases/log-faults.ts';
import type { ColumnName, LogColumns } from './columns.ts';
import type { CsvRecord, CsvTable } from './csv.ts';
import { FaultyLog } from './faulty-log.ts';

/** Words for yes and for no in a column. */
export interface FlagWords {
  readonly yes: readonly string[];
  readonly no: readonly string[];
}

/** Reads the cells of one table's records, each under its column, with its place in every fault. */
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
    const place = this.place(record, name);
    const decimalComma = this.#decimalComma;
    const pattern = decimalComma ? /^-?\d+(,\d+)?$/ : /^-?\d+(\.\d+)?$/;
    if (!pattern.test(text)) {
      throw new FaultyLog({ place, fault: 'number-form', facts: { text, range, decimalComma } });
    }
    if (this.#mayHaveThousands && !decimalComma && /^[1-9]\d{0,2}\.\d{3}$/.test(text)) {
      throw new FaultyLog({ place, fault: 'number-ambiguous', facts: { text, range } });
    }
    const value = Number(text.replace(',', '.'));
    if (isOutside(value, range)) {
      throw new FaultyLog({ place, fault: 'number-outside', facts: { text, range } });
    }
    return value;
  }

  /** As `number`, but an empty cell is refused too. */
  neededNumber(record: CsvRecord, name: ColumnName, range: NumberRange): number {
    const value = this.number(record, name, range);
    if (value !== null) return value;
    throw new FaultyLog({ place: this.place(record, name), fault: 'number-missing', facts: { range } });
  }

  /** A yes or no in the column's own words; null for an empty cell. */
  flag(record: CsvRecord, name: ColumnName, { yes, no }: FlagWords): boolean | null {
    const text = this.text(record, name);
    const word = text.toLowerCase();
    if (word === '') return null;
    if (yes.includes(word)) return true;
    if (no.includes(word)) return false;
    throw new FaultyLog({
      place: this.place(record, name),
      fault: 'word-unknown',
      facts: { text, yes, no },
    });
  }

  /** A surface by its word; null for an empty cell and for "unknown". */
  surface(record: CsvRecord): Surface | null {
    const text = this.text(record, 'surface');
    const word = text.toLowerCase();
    if (word === '' || word === 'unknown') return null;
    const found = SURFACES.find((surface) => surface === word);
    if (found !== undefined) return found;
    throw new FaultyLog({
      place: this.place(record, 'surface'),
      fault: 'surface-unknown',
      facts: { text, surfaces: SURFACES },
    });
  }

  /** A day as YYYY-MM-DD that the calendar has. */
  date(record: CsvRecord): string {
    const text = this.text(record, 'date');
    const millis = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
    if (!Number.isNaN(millis) && new Date(millis).toISOString().startsWith(text)) return text;
    throw new FaultyLog({ place: this.place(record, 'date'), fault: 'date-form', facts: { text } });
  }

  /** Where a cell is, by its line and the heading of its column. */
  place(record: CsvRecord, name: ColumnName): LogPlace {
    return { line: record.line, column: this.#columns.at[name]?.title ?? name };
  }
}

const NUMBER_COLUMNS: readonly ColumnName[] = ['odometer', 'trip', 'volume', 'mass', 'people', 'days'];

function isOutside(value: number, { above, least, most, whole }: NumberRange): boolean {
  if (whole === true && !Number.isInteger(value)) return true;
  if (above !== undefined && value <= above) return true;
  return (least !== undefined && value < least) || value > most;
}
