import { NOTES_NAMESPACE, type NoteRow } from '../../core/notes/files/note-rows.ts';
import { xmlText } from '../xml-text.ts';

/**
 * Notes as GPX 1.1: a waypoint for each where its place is known, for any reader, with the note whole in its extensions;
 * those without a place stand in the extensions of the file.
 */
export function notesGpx(rows: readonly NoteRow[]): string {
  const numbered = rows.map((row, number) => ({ ...row, number }));
  const waypoints = numbered.flatMap((row) => (row.place === null ? [] : [waypoint(row, row.place)]));
  const placeless = numbered.filter(({ place }) => place === null).map(noteElement);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<gpx version="1.1" creator="Drystage" xmlns="http://www.topografix.com/GPX/1/1" xmlns:n="${NOTES_NAMESPACE}">`,
    ...waypoints,
    ...(placeless.length === 0 ? [] : [`<extensions>${placeless.join('\n')}</extensions>`]),
    '</gpx>',
    '',
  ].join('\n');
}

/** Of notes on one thing the order may matter: it is kept, though those without a place stand last. */
interface NumberedRow extends NoteRow {
  readonly number: number;
}

function waypoint(row: NumberedRow, { lon, lat }: NonNullable<NoteRow['place']>): string {
  const { title, note } = row;
  const day = typeof note.on === 'string' ? `<time>${xmlText(note.on)}T00:00:00Z</time>` : '';
  const name = title === null ? '' : `<name>${xmlText(title)}</name>`;
  const words = typeof note.words === 'string' ? `<desc>${xmlText(note.words)}</desc>` : '';
  return `<wpt lat="${lat}" lon="${lon}">${day}${name}${words}<extensions>${noteElement(row)}</extensions></wpt>`;
}

/** In JSON, which escapes what XML cannot hold. */
const noteElement = ({ kind, note, number }: NumberedRow): string =>
  `<n:note of="${kind}" number="${number}">${xmlText(JSON.stringify(note).replace(/[\ufffe\uffff]/g, asEscape))}</n:note>`;

const asEscape = (character: string): string => `\\u${character.charCodeAt(0).toString(16)}`;
