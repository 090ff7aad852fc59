import { FaultyLog } from './faulty-log.ts';

export type Separator = ',' | ';' | '\t';

/** A record with the line on which it begins, from 1. */
export interface CsvRecord {
  line: number;
  cells: string[];
}

export interface CsvTable {
  separator: Separator;
  header: CsvRecord;
  records: CsvRecord[];
}

/** A log of a lifetime has some thousands of lines; more is another file. Ours. */
const MAX_RECORDS = 20_000;

/**
 * Reads CSV after RFC 4180: cells in double quotes may hold separators, line ends and doubled quotes. The separator is
 * the one of comma, semicolon and tab that the first line has most of. Blank lines are no records. Cells come trimmed.
 * Throws FaultyLog with the line.
 */
export function readCsv(text: string): CsvTable {
  const whole = text.startsWith('\ufeff') ? text.slice(1) : text;
  const separator = separatorOf(whole);
  const [header, ...records] = new RecordReader(separator).read(whole);
  if (header === undefined) throw new FaultyLog({ place: null, fault: 'log-empty', facts: {} });
  const most = header.cells.length;
  for (const { line, cells } of records) {
    if (cells.slice(most).every((cell) => cell === '')) continue;
    const facts = { cells: cells.length, most, separator };
    throw new FaultyLog({ place: { line }, fault: 'cells-surplus', facts });
  }
  return { separator, header, records };
}

function separatorOf(text: string): Separator {
  const outside = (text.trimStart().split(/\r?\n|\r/, 1)[0] ?? '').replace(/"[^"]*"/g, '');
  const count = (separator: Separator) => outside.split(separator).length - 1;
  const kinds: Separator[] = [',', ';', '\t'];
  return kinds.reduce((best, kind) => (count(kind) > count(best) ? kind : best));
}

/** Reads sign by sign; its fields hold what was read of the record and the cell at hand. */
class RecordReader {
  readonly #separator: Separator;
  readonly #records: CsvRecord[] = [];
  #line = 1;
  #firstLine = 1;
  #cells: string[] = [];
  #cell = '';
  /** The line on which the quotes around the cell at hand open; null outside quotes. */
  #quoteLine: number | null = null;
  /** Whether quotes around the cell at hand have closed. */
  #closed = false;

  constructor(separator: Separator) {
    this.#separator = separator;
  }

  read(text: string): CsvRecord[] {
    for (let at = 0; at < text.length; at += 1) {
      if (this.#take(text.charAt(at), text.charAt(at + 1))) at += 1;
    }
    if (this.#quoteLine !== null) {
      throw new FaultyLog({ place: { line: this.#quoteLine }, fault: 'quote-open', facts: {} });
    }
    this.#endRecord();
    return this.#records;
  }

  /** Takes one sign; true where the next one is taken with it. */
  #take(sign: string, next: string): boolean {
    const endsLine = sign === '\n' || (sign === '\r' && next !== '\n');
    if (endsLine) this.#line += 1;
    if (this.#quoteLine !== null) return this.#takeQuoted(sign, next);
    if (endsLine) this.#endRecord();
    else if (sign === this.#separator) this.#endCell();
    else if (sign === '"' && this.#cell.trim() === '' && !this.#closed) {
      this.#quoteLine = this.#line;
      this.#cell = '';
    } else if (sign === '"' || (this.#closed && sign.trim() !== '')) {
      throw new FaultyLog({ place: { line: this.#line }, fault: 'quote-inside', facts: {} });
    } else this.#cell += sign;
    return false;
  }

  #takeQuoted(sign: string, next: string): boolean {
    const isDoubled = sign === '"' && next === '"';
    if (sign !== '"' || isDoubled) this.#cell += sign;
    else {
      this.#quoteLine = null;
      this.#closed = true;
    }
    return isDoubled;
  }

  #endCell(): void {
    this.#cells.push(this.#cell.trim());
    this.#cell = '';
    this.#closed = false;
  }

  #endRecord(): void {
    this.#endCell();
    const line = this.#firstLine;
    if (this.#cells.some((cell) => cell !== '')) this.#records.push({ line, cells: this.#cells });
    // The header is one of them.
    if (this.#records.length > MAX_RECORDS + 1) {
      throw new FaultyLog({ place: { line }, fault: 'log-long', facts: { most: MAX_RECORDS } });
    }
    this.#cells = [];
    this.#firstLine = this.#line;
  }
}
