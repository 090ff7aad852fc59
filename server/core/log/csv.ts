import { logFault } from './log-fault.ts';

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
const SEPARATOR_WORDS: Record<Separator, string> = { ',': 'comma', ';': 'semicolon', '\t': 'tab' };

/**
 * Reads CSV after RFC 4180: cells in double quotes may hold separators, line ends and doubled quotes. The separator is
 * the one of comma, semicolon and tab that the first line has most of. Blank lines are no records. Cells come trimmed.
 * Throws InputProblem with the line.
 */
export function readCsv(text: string): CsvTable {
  const whole = text.startsWith('\ufeff') ? text.slice(1) : text;
  const separator = separatorOf(whole);
  const [header, ...records] = recordsOf(whole, separator);
  if (header === undefined) {
    throw logFault(null, 'an empty file', 'a header line and a line for each fill-up', 'Give the log itself');
  }
  for (const { line, cells } of records) {
    const beyond = cells.slice(header.cells.length).find((cell) => cell !== '');
    if (beyond === undefined) continue;
    throw logFault(
      `line ${line}`,
      `${cells.length} cells`,
      `${header.cells.length}, as the header has`,
      `Put a cell that holds a ${SEPARATOR_WORDS[separator]} in double quotes, or take the surplus out`,
    );
  }
  return { separator, header, records };
}

function separatorOf(text: string): Separator {
  const outside = (text.trimStart().split(/\r?\n|\r/, 1)[0] ?? '').replace(/"[^"]*"/g, '');
  const count = (separator: Separator) => outside.split(separator).length - 1;
  const kinds: Separator[] = [',', ';', '\t'];
  return kinds.reduce((best, kind) => (count(kind) > count(best) ? kind : best));
}

function recordsOf(text: string, separator: Separator): CsvRecord[] {
  const records: CsvRecord[] = [];
  let line = 1;
  let begun = 1;
  let cells: string[] = [];
  let cell = '';
  let quotedFrom: number | null = null;
  let closed = false;

  const endCell = () => {
    cells.push(cell.trim());
    cell = '';
    closed = false;
  };
  const endRecord = () => {
    endCell();
    if (cells.some((one) => one !== '')) records.push({ line: begun, cells });
    if (records.length > MAX_RECORDS + 1) {
      throw logFault(
        `line ${begun}`,
        `more than ${MAX_RECORDS} lines`,
        'a log of fill-ups or of water',
        'Cut it to the time that matters',
      );
    }
    cells = [];
    begun = line;
  };

  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at]!;
    const isLineEnd = sign === '\n' || (sign === '\r' && text[at + 1] !== '\n');
    if (isLineEnd) line += 1;
    if (quotedFrom !== null) {
      if (sign !== '"') cell += sign;
      else if (text[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else {
        quotedFrom = null;
        closed = true;
      }
    } else if (isLineEnd) endRecord();
    else if (sign === separator) endCell();
    else if (sign === '"' && cell.trim() === '' && !closed) {
      quotedFrom = line;
      cell = '';
    } else if (sign === '"' || (closed && sign.trim() !== '')) {
      throw logFault(
        `line ${line}`,
        'a double quote inside a cell',
        'quotes around the whole cell, doubled inside it',
        'Write "2"" hose" for 2" hose',
      );
    } else cell += sign;
  }
  if (quotedFrom !== null) {
    throw logFault(
      `line ${quotedFrom}`,
      'a double quote that is never closed',
      'a second one at the end of the cell',
      'Close it',
    );
  }
  endRecord();
  return records;
}
