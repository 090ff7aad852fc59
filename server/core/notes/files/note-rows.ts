import type { FieldNotes } from '../../../contract/answers/field-notes.ts';
import type { ObjectThen } from '../../../contract/common.ts';
import type { TripFile } from '../../../contract/trip.ts';
import type { LonLat } from '../../geodesy/lon-lat.ts';
import { coordinatesOf } from '../coordinates.ts';

/** The kinds of notes, in the order in which files have them. */
export const NOTE_KINDS = [
  'confirmations',
  'corrections',
  'ownPoints',
  'closed',
  'heat',
  'waterNotes',
  'washingSources',
  'laid',
  'surfaces',
  'oneWay',
  'stops',
] as const satisfies readonly (keyof FieldNotes)[];
export type NoteKind = (typeof NOTE_KINDS)[number];

export const isNoteKind = (text: unknown): text is NoteKind =>
  (NOTE_KINDS as readonly unknown[]).includes(text);

/** Names the elements of XML that hold notes. */
export const NOTES_NAMESPACE = 'urn:drystage:notes:1';

/** One note by itself, as all files hold it: what it is of, its fields, and where it is as far as that is known. */
export interface NoteRow {
  readonly kind: NoteKind;
  readonly note: Readonly<Record<string, unknown>>;
  readonly place: LonLat | null;
  /** For people. */
  readonly title: string | null;
}

/** The notes of a trip. */
export function notesOf({ plan, ...trip }: TripFile): FieldNotes {
  const lists = { ...trip, stops: plan?.stops };
  return Object.fromEntries(
    NOTE_KINDS.map((kind) => [kind, lists[kind]] as const).filter(
      ([, entries]) => entries !== undefined && entries.length > 0,
    ),
  );
}

/** A note as it may be of any kind, as far as rows go by its fields. */
interface AnyNote {
  readonly id?: string;
  readonly name?: string;
  readonly at?: string;
  readonly was?: ObjectThen;
}

/** Notes one by one. */
export const rowsOf = (notes: FieldNotes): NoteRow[] =>
  NOTE_KINDS.flatMap((kind) =>
    (notes[kind] ?? []).map((entry: string | AnyNote): NoteRow => {
      const note: AnyNote = typeof entry === 'string' ? { id: entry } : entry;
      return { kind, note: { ...note }, place: placeOf(note), title: note.name ?? note.id ?? null };
    }),
  );

function placeOf({ at, was }: AnyNote): LonLat | null {
  if (was !== undefined) return { lon: was.lon, lat: was.lat };
  const coordinates = at === undefined ? null : coordinatesOf(at);
  return coordinates?.ok === true ? coordinates.place : null;
}

/** Rows as notes again; what they hold is not looked at. */
export function notesFrom(rows: readonly Pick<NoteRow, 'kind' | 'note'>[]): Record<string, unknown> {
  const notes: Record<string, unknown[]> = {};
  for (const { kind, note } of rows) {
    const entry = kind === 'washingSources' ? note.id : note;
    notes[kind] = [...(notes[kind] ?? []), entry];
  }
  return notes;
}
