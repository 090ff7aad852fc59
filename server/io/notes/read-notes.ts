import { checkNotesValue } from '../../app/input/notes-input.ts';
import type { FieldNotes } from '../../contract/answers/field-notes.ts';
import { InputProblem, type Outcome, type ProblemParts, refused } from '../../core/input/problem.ts';
import { readCsv } from '../../core/log/csv.ts';
import { FaultyLog } from '../../core/log/faulty-log.ts';
import { isNoteKind, type NoteRow, notesFrom } from '../../core/notes/files/note-rows.ts';
import { notesInCsv } from '../../core/notes/files/notes-csv.ts';
import { notesInGeojson } from '../../core/notes/files/notes-geojson.ts';
import { utf8Text } from '../small-file.ts';
import { gpxNotes } from './gpx-notes.ts';
import { pointsOfWaypoints } from './waypoint-points.ts';

/** Ten thousand notes are about this. Ours. */
export const MAX_NOTES_BYTES = 8_000_000;

/** Notes of a file, and how many of its objects are none. */
export interface NotesRead {
  readonly notes: FieldNotes;
  readonly others: number;
}

interface RowsRead {
  readonly rows: readonly Pick<NoteRow, 'kind' | 'note'>[];
  readonly others: number;
}

const EXPECTED = 'notes as GPX, GeoJSON or CSV';

/**
 * Reads notes of any of the formats in which they are written, by their content; waypoints of other programs become own
 * points where they say what is to be had. `source` names the file in a refusal, `today` dates what has no date.
 */
export function readNotes(bytes: Uint8Array, source: string, today: string): Outcome<NotesRead> {
  try {
    const text = textOf(bytes, source);
    const { rows, others } = rowsIn(text, source, today);
    const checked = checkNotesValue(notesFrom(rows), source);
    return checked.ok ? { ok: true, value: { notes: checked.value, others } } : checked;
  } catch (error) {
    if (error instanceof InputProblem) return { ok: false, problem: error.problem };
    if (error instanceof FaultyLog) return refused(csvProblem(error, source));
    throw error;
  }
}

function textOf(bytes: Uint8Array, source: string): string {
  const text = utf8Text(bytes);
  if (text === null) throw invalid(source, null, 'bytes that are not UTF-8 text');
  if (text.trim() !== '') return text;
  const remedy = 'Give the file with the notes';
  throw new InputProblem({ code: 'empty-file', source, came: 'an empty file', expected: EXPECTED, remedy });
}

function rowsIn(text: string, source: string, today: string): RowsRead {
  const opening = text.replace(/^\ufeff/, '').trimStart();
  if (opening.startsWith('<')) return rowsInGpx(opening, source, today);
  if (opening.startsWith('{')) return rowsInGeojson(opening, source);
  const table = notesInCsv(readCsv(text));
  if (table.ok) return { rows: table.rows, others: 0 };
  const { line, column, cell } = table.fault;
  throw invalid(
    source,
    `line ${line}, column ${column}`,
    cell === '' ? 'an empty cell' : `"${cell.slice(0, 60)}"`,
  );
}

function rowsInGpx(text: string, source: string, today: string): RowsRead {
  const { notes, waypoints } = gpxNotes(text, source);
  const rows = notes.map(({ of, json, line }) => {
    const note = parsed(json);
    if (!isNoteKind(of) || note === null)
      throw invalid(source, `line ${line}`, `a note of "${of.slice(0, 60)}"`);
    return { kind: of, note };
  });
  const points = pointsOfWaypoints(waypoints, source, today);
  const own = points.map((point) => ({ kind: 'ownPoints' as const, note: { ...point } }));
  return { rows: [...rows, ...own], others: waypoints.length - points.length };
}

function rowsInGeojson(text: string, source: string): RowsRead {
  const found = notesInGeojson(parsed(text));
  if (found === null) throw invalid(source, null, 'JSON that is no GeoJSON collection of features');
  return found;
}

/** An object, null where the text is none. */
function parsed(text: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  } catch {
    return null;
  }
}

const invalid = (source: string, place: string | null, came: string): InputProblem =>
  new InputProblem({
    code: 'notes-invalid',
    source,
    place,
    came,
    expected: EXPECTED,
    remedy: 'Export the notes again, or correct that place',
  });

function csvProblem({ fault }: FaultyLog, source: string): ProblemParts {
  const { place } = fault;
  const line = place !== null && 'line' in place ? `line ${place.line}` : null;
  return invalid(source, line, 'CSV that is not whole').problem;
}
