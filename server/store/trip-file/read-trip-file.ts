import { misfitOf } from '../../app/input/check-shape.ts';
import type { RigAndTrip } from '../../app/input/plan-input.ts';
import { type Outcome, refused } from '../../core/input/problem.ts';
import { packMaps, readMaps } from '../maps/trip-maps.ts';
import { TRIP_FILE_VERSION, WrittenTrip } from './written-trip.ts';

/** A trip as its file has it. */
export interface TripFromFile extends RigAndTrip {
  name: string;
  notes: string;
  notice: string | null;
  route: { fileName: string; bytes: Uint8Array<ArrayBuffer> };
  /** As the store has them. */
  maps: Uint8Array<ArrayBuffer>;
  /** How the extracts are called that it was made with. */
  extracts: string[];
}

type Fields = Record<string, unknown>;

/** What makes of a file of a version one of the next, the first of version 1. Never changed once given out. */
const STEPS: readonly ((file: Fields) => Fields)[] = [
  // Version 2 has notes, and says when it was written.
  (file) => ({ ...file, version: 2, notes: '', written: '1970-01-01T00:00:00.000Z' }),
];

const EXPECTED = 'a trip that Drystage wrote (.drystage.json)';
const AGAIN = 'Export the trip again, and send or copy the whole file';

const invalid = (source: string, place: string | null, came: string, remedy = AGAIN): Outcome<never> =>
  refused({ code: 'trip-file-invalid', source, place, came, expected: EXPECTED, remedy });

/** Reads the text of a trip's file, of this version or an older one. `source` names it in a refusal. */
export function readTripFile(text: string, source: string): Outcome<TripFromFile> {
  if (text.trim() === '') return invalid(source, null, 'an empty file');
  const json = parsed(text, source);
  if (!json.ok) return json;
  const present = inPresentVersion(json.value, source);
  if (!present.ok) return present;
  const misfit = misfitOf(WrittenTrip, present.value);
  if (misfit !== null) {
    const place = [...(misfit.file?.at ?? []).map((key) => `/${key}`), misfit.path].join('');
    const { came, expected } = misfit;
    return invalid(source, place === '' ? null : place, `${came} where ${expected} is expected`);
  }
  return tripOf(present.value as WrittenTrip, source);
}

function parsed(text: string, source: string): Outcome<Fields> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    const isCut = text.trimStart().startsWith('{') && !text.trimEnd().endsWith('}');
    return invalid(source, null, isCut ? 'a file that ends too early' : 'text that is not JSON');
  }
  if (typeof value !== 'object' || value === null || !('drystage' in value) || value.drystage !== 'trip') {
    return invalid(source, null, 'JSON of another kind', 'Choose the file of a trip');
  }
  return { ok: true, value: { ...value } };
}

function inPresentVersion(file: Fields, source: string): Outcome<Fields> {
  const { version } = file;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return invalid(source, '/version', 'no version');
  }
  if (version > TRIP_FILE_VERSION) {
    return refused({
      code: 'trip-file-too-new',
      source,
      place: '/version',
      came: `a file of version ${version}`,
      expected: `version ${TRIP_FILE_VERSION} at most`,
      remedy: 'Use the newer program that wrote it, or have it written by this one',
    });
  }
  const value = STEPS.slice(version - 1).reduce((older, step) => step(older), file);
  return { ok: true, value };
}

function tripOf(file: WrittenTrip, source: string): Outcome<TripFromFile> {
  const { name, notes, notice, rig, trip, route, maps } = file;
  const { fileName, gpx, gpxBase64 } = route;
  if ((gpx === undefined) === (gpxBase64 === undefined)) {
    return invalid(source, '/route', gpx === undefined ? 'no route' : 'the route twice');
  }
  const bytes = gpx === undefined ? Buffer.from(gpxBase64 ?? '', 'base64') : Buffer.from(gpx, 'utf8');
  return {
    ok: true,
    value: {
      ...{ name, notes, notice, rig, trip },
      route: { fileName, bytes: new Uint8Array(bytes) },
      maps: packMaps(readMaps(maps)),
      extracts: maps.extracts.map((extract) => extract.source),
    },
  };
}
