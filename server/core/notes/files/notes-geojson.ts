import { isNoteKind, type NoteRow } from './note-rows.ts';

/** Notes as GeoJSON (RFC 7946): a point for each where its place is known, else a feature without geometry. */
export function notesGeojson(rows: readonly NoteRow[]): string {
  const features = rows.map(({ kind, note, place, title }) => ({
    type: 'Feature',
    geometry: place === null ? null : { type: 'Point', coordinates: [place.lon, place.lat] },
    properties: { noteOf: kind, ...(title === null ? {} : { title }), note },
  }));
  return `${JSON.stringify({ type: 'FeatureCollection', features }, null, 1)}\n`;
}

/** What of a parsed GeoJSON file is notes, and how many features are none. */
export function notesInGeojson(
  value: unknown,
): { rows: Pick<NoteRow, 'kind' | 'note'>[]; others: number } | null {
  if (!isRecord(value) || !Array.isArray(value.features)) return null;
  const rows = value.features.flatMap((feature: unknown) => {
    const properties = isRecord(feature) && isRecord(feature.properties) ? feature.properties : {};
    const { noteOf, note } = properties;
    return isNoteKind(noteOf) && isRecord(note) ? [{ kind: noteOf, note }] : [];
  });
  return { rows, others: value.features.length - rows.length };
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
