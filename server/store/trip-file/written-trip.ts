import { type Static, type TSchema, Type } from 'typebox';
import { RigFile } from '../../contract/rig.ts';
import { TripFile } from '../../contract/trip.ts';
import type { WrittenMaps } from '../maps/trip-maps.ts';

/** The version of a trip's file that this program writes; TRIP-FILE.md describes it. */
export const TRIP_FILE_VERSION = 2;

const nullable = <T extends TSchema>(schema: T) => Type.Union([schema, Type.Null()]);
const numbers = Type.Array(Type.Number());
const bbox = nullable(Type.Tuple([Type.Number(), Type.Number(), Type.Number(), Type.Number()]));
const geometry = Type.Object({ type: Type.String() });
const tags = Type.Record(Type.String(), Type.String());
const text = nullable(Type.String());

const Far = Type.Object({ bbox, objects: Type.Array(nullable(Type.Number())) });
const WrittenElement = Type.Object({
  type: Type.Union([Type.Literal('node'), Type.Literal('way'), Type.Literal('relation')]),
  id: Type.Integer(),
  lat: Type.Optional(Type.Number()),
  lon: Type.Optional(Type.Number()),
  nodes: Type.Optional(Type.Array(Type.Integer())),
  members: Type.Optional(
    Type.Array(Type.Object({ type: Type.String(), ref: Type.Integer(), role: Type.String() })),
  ),
  tags: Type.Optional(tags),
});
const Said = Type.Object({ facts: Type.Object({}) });

/** What one extract shows near the route. */
const ExtractShape = Type.Object({
  source: Type.String({ minLength: 1 }),
  format: Type.String(),
  papers: Type.Object({ asOf: text, attribution: text, licence: text }),
  elements: Type.Array(WrittenElement),
  wanted: Type.Array(Type.String()),
  far: Far,
  unwanted: Far,
  deleted: Far,
  features: Type.Array(Type.Object({ id: Type.String(), geometry, tags, editedAt: text })),
  bounds: bbox,
  moreBounds: Type.Optional(
    Type.Array(Type.Tuple([Type.Number(), Type.Number(), Type.Number(), Type.Number()])),
  ),
  hull: nullable(Type.Array(Type.Tuple([Type.Number(), Type.Number()]))),
  shows: Type.Object({ fuel: Type.Boolean(), water: Type.Boolean(), general: Type.Boolean() }),
  roads: text,
  surroundings: Type.Array(
    Type.Object({ id: Type.String(), what: Type.String(), name: text, lines: Type.Array(numbers) }),
  ),
  drawnRoads: nullable(Type.Object({ cells: Type.String(), marks: Type.String() })),
  counts: Type.Object({ nodes: Type.Integer(), ways: Type.Integer(), relations: Type.Integer() }),
  skipped: Type.Array(Type.Object({ id: Type.String(), reason: Said })),
  cautions: Type.Array(Said),
});

const MapsShape = Type.Object({
  extracts: Type.Array(ExtractShape, { maxItems: 100 }),
  extents: Type.Array(Type.Object({ source: Type.String(), bbox, objects: Type.Integer() })),
  ground: Type.Array(
    Type.Object({
      type: Type.Literal('Feature'),
      geometry,
      properties: Type.Object({ what: Type.String(), name: text, rank: Type.String() }),
    }),
  ),
  groundLeftOut: Type.Integer(),
});

/** A trip in a file, whole. What it has beside is passed over: a program of the same version may add to it. */
export const WrittenTrip = Type.Object({
  drystage: Type.Literal('trip'),
  version: Type.Literal(TRIP_FILE_VERSION),
  /** ISO time. */
  written: Type.String(),
  name: Type.String({ minLength: 1, maxLength: 120 }),
  notes: Type.String({ maxLength: 100_000 }),
  /** Set when the land is invented and must not be driven by. */
  notice: text,
  rig: RigFile,
  trip: TripFile,
  /** The route's file as it came: its text, or in base 64 where it is no UTF-8. */
  route: Type.Object({
    fileName: Type.String({ minLength: 1, maxLength: 200 }),
    gpx: Type.Optional(Type.String()),
    gpxBase64: Type.Optional(Type.String()),
  }),
  maps: Type.Unsafe<WrittenMaps>(MapsShape),
});
export type WrittenTrip = Static<typeof WrittenTrip>;
