import { writeFile } from 'node:fs/promises';
import { extname } from 'node:path';
import { notesFile } from '../../app/notes/notes-file.ts';
import { plain } from '../../app/text/lines/plain.ts';
import { left, tableText } from '../../app/text/lines/table-text.ts';
import { today } from '../../app/today.ts';
import type { NotesFormat } from '../../contract/answers/field-notes.ts';
import { InputProblem, type Outcome, refused } from '../../core/input/problem.ts';
import { type NoteRow, notesOf, rowsOf } from '../../core/notes/files/note-rows.ts';
import { mergeNotes } from '../../core/notes/merge-notes.ts';
import { MAX_NOTES_BYTES, readNotes } from '../../io/notes/read-notes.ts';
import { readSmallFile } from '../../io/small-file.ts';
import { dataFolder } from '../../store/data-folder.ts';
import type { Store } from '../../store/library/store.ts';
import type { StoredTrip } from '../../store/port/port.ts';
import { column } from '../../words/en/printed/shared/columns.ts';
import type { Command } from '../command.ts';
import { jsonLine } from '../json-line.ts';
import { tripOf, withStore } from '../kept-inputs.ts';
import { refuse } from '../refuse.ts';
import { type KeptWords, readKeptWords } from './words-of.ts';

const VERBS = 'list, export or import';

const help = () => `npm run -s drystage -- notes list TRIP [--json] | export TRIP FILE | import TRIP FILE

What a kept trip notes of supplies and of the road: confirmations, corrections, own points, closed stretches and the like.

  list TRIP         its notes, by kind; TRIP is its name or id
  export TRIP FILE  writes them as a new file: .gpx, .geojson or .csv, by its ending
  import TRIP FILE  adds the notes of a file (GPX, GeoJSON or CSV, by its content) to the trip
  --json            with list: the notes as JSON
  --help            this text

Trips are kept in ${dataFolder()} (DRYSTAGE_DATA chooses another folder).
Exit status as of gaps.
`;

/** The notes of kept trips. */
export const notes: Command = async (words) => {
  const read = readKeptWords(words, VERBS);
  if (!read.ok) return read;
  const { verb, rest } = read.value;
  if (verb === null) return { ok: true, value: help() };
  const work = Object.hasOwn(WORK, verb) ? WORK[verb] : undefined;
  if (work === undefined) return refuse(verb, 'nothing that can be done with notes', VERBS);
  const [name, path, extra] = rest;
  if (name === undefined) return refuse(verb, `no word after ${verb}`, 'the name of a kept trip');
  if (work.takesFile && path === undefined) return refuse(verb, 'no file', 'a file after the trip');
  const most = work.takesFile ? extra : path;
  if (most !== undefined) return refuse(most, 'a word too many', VERBS);
  return withStore((store) => {
    const trip = tripOf(store, name);
    if (trip === null) return refuse(name, 'no kept trip of that name', 'one that drystage trip list shows');
    return work.run({ store, trip, path: path ?? '', words: read.value });
  });
};

interface NotesWork {
  store: Store;
  trip: StoredTrip;
  path: string;
  words: KeptWords;
}

const WORK: Readonly<
  Record<string, { takesFile: boolean; run: (work: NotesWork) => Outcome<string> | Promise<Outcome<string>> }>
> = {
  list: { takesFile: false, run: list },
  export: { takesFile: true, run: exportNotes },
  import: { takesFile: true, run: importNotes },
};

const textIn = ({ note }: NoteRow, key: string): string => {
  const value = note[key];
  return typeof value === 'string' ? plain(value) : '';
};

function list({ trip, words }: NotesWork): Outcome<string> {
  const found = notesOf(trip.trip);
  if (words.json) return { ok: true, value: jsonLine({ notes: found }) };
  const rows = rowsOf(found);
  if (rows.length === 0) return { ok: true, value: 'Nothing is noted.\n' };
  const columns = ['kind', 'of', 'on', 'by', 'words'].map((head) => left(column(head)));
  const cells = rows.map((row) => [
    row.kind,
    plain(row.title ?? ''),
    textIn(row, 'on'),
    textIn(row, 'by'),
    textIn(row, 'words'),
  ]);
  return { ok: true, value: `${tableText(columns, cells).join('\n')}\n` };
}

const FORMATS: Readonly<Record<string, NotesFormat>> = {
  '.gpx': 'gpx',
  '.geojson': 'geojson',
  '.csv': 'csv',
};

async function exportNotes({ trip, path }: NotesWork): Promise<Outcome<string>> {
  const format = FORMATS[extname(path).toLowerCase()];
  if (format === undefined)
    return refuse(path, 'another ending', 'a file that ends in .gpx, .geojson or .csv');
  try {
    await writeFile(path, notesFile(trip.trip, format), { flag: 'wx' });
    return { ok: true, value: `${path}\n` };
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    const came =
      code === 'EEXIST' ? 'a file that is there already' : `a file that cannot be written (${code})`;
    const remedy = 'Give another name';
    return refused({ code: 'file-unreadable', source: path, came, expected: 'a free name', remedy });
  }
}

async function importNotes({ store, trip, path }: NotesWork): Promise<Outcome<string>> {
  const bytes = await readSmallFile(path, {
    what: 'notes as GPX, GeoJSON or CSV',
    mostBytes: MAX_NOTES_BYTES,
  });
  if (!bytes.ok) return bytes;
  const read = readNotes(bytes.value, path, today());
  if (!read.ok) return read;
  const { trip: merged, added, replaced } = mergeNotes(trip.trip, read.value.notes);
  if (added + replaced > 0) {
    const change = `Notes of ${path}`.slice(0, 300);
    const saved = store.changeTrip(trip.id, trip.revision, { rig: trip.rig, trip: merged, change });
    if (saved.outcome !== 'saved') throw changedMeanwhile(trip);
  }
  const { others } = read.value;
  const passed = others === 0 ? '' : ` ${others} objects of the file are no notes.`;
  return { ok: true, value: `${added} notes are new, ${replaced} stand in place of others.${passed}\n` };
}

const changedMeanwhile = ({ name }: StoredTrip) =>
  new InputProblem({
    code: 'changed-elsewhere',
    source: name,
    came: 'a trip that was changed at this very moment',
    expected: 'the trip as it was read',
    remedy: 'Do it again',
  });
