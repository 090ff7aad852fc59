import { FieldNotes } from '../../../contract/answers/field-notes.ts';
import { escapeUnseen, hasUnseen } from '../../input/unseen.ts';
import type { CsvTable } from '../../log/csv.ts';
import { isNoteKind, type NoteKind, type NoteRow } from './note-rows.ts';

/** A column of its own, beside the fields of notes. */
const KIND = 'noteOf';

/** The part of a schema that tells how a field stands in a cell. */
interface FieldShape {
  readonly type?: string;
  readonly anyOf?: readonly FieldShape[];
  readonly const?: unknown;
}

/** The fields of a kind of notes, as the contract has them. */
function fieldsOf(kind: NoteKind): Readonly<Record<string, FieldShape>> {
  const list = FieldNotes.properties[kind] as { items: { properties?: Record<string, FieldShape> } };
  return list.items.properties ?? { id: { type: 'string' } };
}

const isText = ({ type, anyOf }: FieldShape): boolean =>
  type === 'string' || anyOf?.every((one) => typeof one.const === 'string') === true;

/** Spreadsheets take a cell that begins with one of these for a formula (OWASP, "CSV Injection"). */
const FORMULA_START = /^[=+\-@\t\r]/;

/**
 * Notes as CSV (RFC 4180), one line each, a column for each field that any of them has. Texts stand as they are, with an
 * apostrophe before what a spreadsheet would run; those with blanks at an end, quotes at the beginning or signs that nobody sees, and lists and
 * groups are JSON.
 */
export function notesCsv(rows: readonly NoteRow[]): string {
  const columns = [...new Set(rows.flatMap(({ note }) => Object.keys(note)))];
  const lines = rows.map(({ kind, note }) => [kind, ...columns.map((column) => cellOf(note[column]))]);
  return `\ufeff${[[KIND, ...columns], ...lines].map((line) => line.map(quoted).join(',')).join('\r\n')}\r\n`;
}

const quoted = (cell: string): string =>
  /[",;\t\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;

function cellOf(value: unknown): string {
  if (value === undefined) return '';
  if (typeof value !== 'string') return escapeUnseen(JSON.stringify(value));
  if (value === '' || value !== value.trim() || /^['"]/.test(value) || hasUnseen(value))
    return `'${escapeUnseen(JSON.stringify(value))}`;
  return FORMULA_START.test(value) ? `'${value}` : value;
}

/** A cell that is not what its column asks for. */
export interface CellFault {
  readonly line: number;
  readonly column: string;
  readonly cell: string;
}

export type NotesInCsv =
  | { readonly ok: true; readonly rows: readonly Pick<NoteRow, 'kind' | 'note'>[] }
  | { readonly ok: false; readonly fault: CellFault };

/** The notes of a table whose header names their fields. */
export function notesInCsv({ header, records }: CsvTable): NotesInCsv {
  const rows: Pick<NoteRow, 'kind' | 'note'>[] = [];
  for (const { line, cells } of records) {
    const kind = cells[header.cells.indexOf(KIND)];
    if (!isNoteKind(kind)) return { ok: false, fault: { line, column: KIND, cell: kind ?? '' } };
    const note: Record<string, unknown> = {};
    for (const [index, column] of header.cells.entries()) {
      const cell = cells[index] ?? '';
      if (column === KIND || cell === '') continue;
      const value = readCell(cell, fieldsOf(kind)[column] ?? { type: 'string' });
      if (value === undefined) return { ok: false, fault: { line, column, cell } };
      note[column] = value;
    }
    rows.push({ kind, note });
  }
  return { ok: true, rows };
}

/** Undefined where the cell cannot be read. */
function readCell(cell: string, shape: FieldShape): unknown {
  if (!isText(shape)) return parsed(cell);
  if (cell.startsWith(`'"`)) return parsed(cell.slice(1));
  return cell.startsWith("'") ? cell.slice(1) : cell;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
