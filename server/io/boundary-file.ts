import { dirname, resolve } from 'node:path';
import type { TripFile } from '../contract/trip.ts';
import { InputProblem, type Outcome, refused } from '../core/input/problem.ts';
import { scanJson } from './osm/json/scan-json.ts';
import { readSmallFile } from './small-file.ts';

type Ring = [number, number][];

/** A country's outline in full is some 2 MB. Ours. */
const MAX_BOUNDARY_BYTES = 32_000_000;

const EXPECTED = 'a boundary: .poly (osmosis) or GeoJSON with polygons, without holes';

/** The rings of a boundary file; holes are refused, since what they leave out would count as covered. */
async function readBoundary(path: string): Promise<Outcome<Ring[]>> {
  const bytes = await readSmallFile(path, { what: EXPECTED, mostBytes: MAX_BOUNDARY_BYTES });
  if (!bytes.ok) {
    const { problem } = bytes;
    const remedy = 'Check the path; it is taken from the folder of the trip file';
    return problem.code === 'file-missing' ? { ok: false, problem: { ...problem, remedy } } : bytes;
  }
  const text = bytes.value.toString('utf8');
  try {
    scanJson(text, path, 'Give the outline alone');
  } catch (error) {
    if (error instanceof InputProblem) return { ok: false, problem: error.problem };
    throw error;
  }
  const rings = text.trimStart().startsWith('{') ? ringsOfJson(text) : ringsOfPoly(text);
  if (rings !== null && rings.length > 0 && rings.every(isRing)) return { ok: true, value: rings };
  return refused({
    code: 'unknown-format',
    source: path,
    came: 'something else',
    expected: EXPECTED,
    remedy: 'Give the boundary as one of these',
  });
}

const isRing = (ring: Ring): boolean =>
  ring.length >= 3 && ring.every(([lon, lat]) => Math.abs(lon) <= 180 && Math.abs(lat) <= 90);

/** Osmosis polygon filter file: a name, then sections of "lon lat" lines, each closed by END, and END. */
function ringsOfPoly(text: string): Ring[] | null {
  const [, ...lines] = text.split(/\r?\n/).map((line) => line.trim());
  const rings: Ring[] = [];
  let open: Ring | null = null;
  for (const line of lines) {
    if (line === '') continue;
    if (line === 'END') {
      if (open === null) return rings;
      rings.push(open);
      open = null;
    } else if (open === null) {
      if (line.startsWith('!')) return null;
      open = [];
    } else {
      const [lon = Number.NaN, lat = Number.NaN] = line.split(/\s+/).map(Number);
      open.push([lon, lat]);
    }
  }
  return null;
}

function ringsOfJson(text: string): Ring[] | null {
  try {
    return polygonsIn(JSON.parse(text)).map((polygon) => {
      const [outer, ...holes] = polygon;
      if (outer === undefined || holes.length > 0) throw new TypeError('a polygon with holes');
      return outer.map(([lon, lat]): [number, number] => [Number(lon), Number(lat)]);
    });
  } catch {
    return null;
  }
}

function polygonsIn(value: unknown): Ring[][] {
  const { type, features, geometry, coordinates } = value as Record<string, unknown>;
  if (type === 'FeatureCollection') return (features as unknown[]).flatMap(polygonsIn);
  if (type === 'Feature') return polygonsIn(geometry);
  if (type === 'Polygon') return [coordinates as Ring[]];
  if (type === 'MultiPolygon') return coordinates as Ring[][];
  throw new TypeError('no polygon');
}

/** The trip with the rings of every boundary that it names by a file, whose path is taken from the trip file's folder. */
export async function withBoundaries(trip: TripFile, tripPath: string): Promise<Outcome<TripFile>> {
  if (trip.extracts === undefined) return { ok: true, value: trip };
  const extracts: NonNullable<TripFile['extracts']> = [];
  for (const entry of trip.extracts) {
    const boundaries: NonNullable<(typeof entry)['boundaries']> = [];
    for (const boundary of entry.boundaries ?? []) {
      if (boundary.file === undefined) {
        boundaries.push(boundary);
        continue;
      }
      const rings = await readBoundary(resolve(dirname(tripPath), boundary.file));
      if (!rings.ok) return rings;
      boundaries.push({ ...boundary, rings: rings.value });
    }
    extracts.push(entry.boundaries === undefined ? entry : { ...entry, boundaries });
  }
  return { ok: true, value: { ...trip, extracts } };
}
