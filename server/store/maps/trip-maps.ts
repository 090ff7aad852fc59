import { gunzipSync, gzipSync } from 'node:zlib';
import type { ExtractExtent, GroundFeature } from '../../app/loaded-trip.ts';
import type { DrawnRoads, Surrounding } from '../../core/input/sources.ts';
import type { FarObjects } from '../../io/osm/extract/far-objects.ts';
import type { RawExtract } from '../../io/osm/extract/raw-extract.ts';

/** What extracts show near one route: enough to analyse it, and to unite it with further extracts. */
export interface TripMaps {
  /** Each as it was read near the route, without its ground. */
  extracts: readonly RawExtract[];
  extents: readonly ExtractExtent[];
  /** Thinned for the map already; so many lines were left out. */
  ground: readonly GroundFeature[];
  groundLeftOut: number;
}

export const NO_MAPS: TripMaps = { extracts: [], extents: [], ground: [], groundLeftOut: 0 };

/** Maps without an extract of that name. What is drawn of the ground is not told apart: it goes with the last extract. */
export function withoutExtract(maps: TripMaps, name: string): TripMaps {
  const extracts = maps.extracts.filter(({ source }) => source !== name);
  if (extracts.length === 0) return NO_MAPS;
  return { ...maps, extracts, extents: maps.extents.filter(({ source }) => source !== name) };
}

/** Whole numbers of 32 bits, in base 64, the lowest byte first. */
type Packed = string;

interface WrittenFar extends Omit<FarObjects, 'packed'> {
  /** Kind (0 node, 1 way, 2 relation), id, version, time of edit in milliseconds, in turn; null for what is not known. */
  objects: (number | null)[];
}

/** A RawExtract in plain JSON. */
interface WrittenExtract
  extends Omit<
    RawExtract,
    'wanted' | 'far' | 'unwanted' | 'deleted' | 'roads' | 'surroundings' | 'drawnRoads' | 'ground'
  > {
  wanted: string[];
  far: WrittenFar;
  unwanted: WrittenFar;
  deleted: WrittenFar;
  roads: Packed | null;
  surroundings: (Omit<Surrounding, 'lines'> & { lines: number[][] })[];
  drawnRoads: { cells: Packed; marks: Packed } | null;
}

/** TripMaps in plain JSON. */
export interface WrittenMaps extends Omit<TripMaps, 'extracts'> {
  extracts: WrittenExtract[];
}

const pack = (numbers: Int32Array): Packed => {
  const bytes = Buffer.alloc(numbers.length * 4);
  for (const [index, number] of numbers.entries()) bytes.writeInt32LE(number, index * 4);
  return bytes.toString('base64');
};

const unpack = (packed: Packed): Int32Array => {
  const bytes = Buffer.from(packed, 'base64');
  return Int32Array.from({ length: Math.floor(bytes.length / 4) }, (_, index) =>
    bytes.readInt32LE(index * 4),
  );
};

const writeFar = ({ packed, bbox }: FarObjects): WrittenFar => ({
  bbox,
  objects: Array.from(packed, (value) => (Number.isNaN(value) ? null : value)),
});

const readFar = ({ objects, bbox }: WrittenFar): FarObjects => ({
  bbox,
  packed: Float64Array.from(objects, (value) => value ?? Number.NaN),
});

const writeRoads = (roads: DrawnRoads | null) =>
  roads === null ? null : { cells: pack(roads.cells), marks: pack(roads.marks) };

function writeExtract({ ground: _, ...extract }: RawExtract): WrittenExtract {
  const { wanted, far, unwanted, deleted, roads, surroundings, drawnRoads } = extract;
  return {
    ...extract,
    wanted: [...wanted],
    far: writeFar(far),
    unwanted: writeFar(unwanted),
    deleted: writeFar(deleted),
    roads: roads === null ? null : pack(roads),
    surroundings: surroundings.map((object) => ({ ...object, lines: object.lines.map((line) => [...line]) })),
    drawnRoads: writeRoads(drawnRoads),
  };
}

function readExtract(extract: WrittenExtract): RawExtract {
  const { wanted, far, unwanted, deleted, roads, surroundings, drawnRoads } = extract;
  return {
    ...extract,
    wanted: new Set(wanted),
    far: readFar(far),
    unwanted: readFar(unwanted),
    deleted: readFar(deleted),
    roads: roads === null ? null : unpack(roads),
    surroundings: surroundings.map((object) => ({
      ...object,
      lines: object.lines.map((line) => Float64Array.from(line)),
    })),
    drawnRoads:
      drawnRoads === null ? null : { cells: unpack(drawnRoads.cells), marks: unpack(drawnRoads.marks) },
    ground: [],
  };
}

/** As plain JSON, for a file that a person can read. */
export const writeMaps = (maps: TripMaps): WrittenMaps => ({
  ...maps,
  extracts: maps.extracts.map(writeExtract),
});

export const readMaps = (written: WrittenMaps): TripMaps => ({
  ...written,
  extracts: written.extracts.map(readExtract),
});

/** As bytes, for the store. */
export const packMaps = (maps: TripMaps): Uint8Array<ArrayBuffer> =>
  new Uint8Array(gzipSync(JSON.stringify(writeMaps(maps)), { level: 3 }));

export const unpackMaps = (bytes: Uint8Array): TripMaps =>
  readMaps(JSON.parse(gunzipSync(bytes).toString()) as WrittenMaps);
