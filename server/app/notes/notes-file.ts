import type { NotesFormat } from '../../contract/answers/field-notes.ts';
import type { TripFile } from '../../contract/trip.ts';
import { type NoteRow, notesOf, rowsOf } from '../../core/notes/files/note-rows.ts';
import { notesCsv } from '../../core/notes/files/notes-csv.ts';
import { notesGeojson } from '../../core/notes/files/notes-geojson.ts';
import { notesGpx } from './notes-gpx.ts';

const WRITERS: Record<NotesFormat, (rows: readonly NoteRow[]) => string> = {
  gpx: notesGpx,
  geojson: notesGeojson,
  csv: notesCsv,
};

/** What a trip notes of supplies and of the road, as a file of that format. */
export const notesFile = (trip: TripFile, format: NotesFormat): string =>
  WRITERS[format](rowsOf(notesOf(trip)));
