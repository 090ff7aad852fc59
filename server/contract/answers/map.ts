import { type Static, Type } from 'typebox';
import { Analysis } from '../analysis.ts';
import { Bbox } from '../common.ts';
import { RigFile } from '../rig.ts';
import { TripFile } from '../trip.ts';

const Position = Type.Array(Type.Number(), { minItems: 2, maxItems: 3 });
const featureOf = <
  G extends Parameters<typeof Type.Object>[0][string],
  P extends Parameters<typeof Type.Object>[0][string],
>(
  geometry: G,
  properties: P,
) => Type.Object({ type: Type.Literal('Feature'), geometry, properties });
const collectionOf = <F extends Parameters<typeof Type.Array>[0]>(feature: F) =>
  Type.Object({ type: Type.Literal('FeatureCollection'), features: Type.Array(feature) });

const Line = Type.Object({ type: Type.Literal('LineString'), coordinates: Type.Array(Position) });
const Point = Type.Object({ type: Type.Literal('Point'), coordinates: Position });
const AnyGeometry = Type.Object({ type: Type.String(), coordinates: Type.Unknown() });

/** A piece of the route with one state for one commodity; pieces of a commodity tile the route. */
export const RoutePiece = Type.Object({
  commodity: Type.Union([Type.Literal('fuel'), Type.Literal('water')]),
  gap: Type.Integer(),
  verdict: Type.String(),
  /** `left`: above the reserve; `reserve`: into it; `dry`: nothing left. */
  state: Type.Union([Type.Literal('left'), Type.Literal('reserve'), Type.Literal('dry')]),
  /** No extract covers this piece for the commodity. */
  noCover: Type.Boolean(),
  /** What is left as a share of the drawable capacity, 0 to 1, at the middle of the piece. */
  share: Type.Number(),
  fromKm: Type.Number(),
  toKm: Type.Number(),
});
export type RoutePiece = Static<typeof RoutePiece>;

/** A supply point on the map; one feature for each point and commodity, with all its passings. */
export const SupplyMark = Type.Object({
  id: Type.String(),
  name: Type.Union([Type.String(), Type.Null()]),
  commodity: Type.Union([Type.Literal('fuel'), Type.Literal('water')]),
  kind: Type.String(),
  counts: Type.Boolean(),
  evidence: Type.String(),
  atKm: Type.Array(Type.Number()),
  tags: Type.Record(Type.String(), Type.String()),
});
export type SupplyMark = Static<typeof SupplyMark>;

/** Ground for a map without a network: what the extracts hold of roads, places, coast, water, borders. */
export const GroundMark = Type.Object({
  what: Type.Union([
    Type.Literal('road'),
    Type.Literal('track'),
    Type.Literal('place'),
    Type.Literal('coast'),
    Type.Literal('land'),
    Type.Literal('river'),
    Type.Literal('lake'),
    Type.Literal('border'),
  ]),
  name: Type.Union([Type.String(), Type.Null()]),
  /** Road or place class as tagged: "primary", "town"; of others what they are. */
  rank: Type.String(),
});
export type GroundMark = Static<typeof GroundMark>;

/** What an extract reaches over. */
const ExtractOutline = Type.Object({
  /** The file as it was named. */
  source: Type.String(),
  /** Closed rings, [lon, lat]; an area over the 180th meridian comes as two. */
  rings: Type.Array(Type.Array(Position)),
});

export const MapData = Type.Object({
  bbox: Bbox,
  /** The route simplified, with the km of each vertex, for hovering and jumps between map and strip. */
  line: Type.Object({ coordinates: Type.Array(Position), atKm: Type.Array(Type.Number()) }),
  route: collectionOf(featureOf(Line, RoutePiece)),
  supplies: collectionOf(featureOf(Point, SupplyMark)),
  ground: collectionOf(featureOf(AnyGeometry, GroundMark)),
  /** Of each extract that has a place: beyond all of them the map knows nothing. */
  extracts: Type.Array(ExtractOutline),
  /** Set when the land is invented and must not be driven by. */
  notice: Type.Union([Type.String(), Type.Null()]),
});
export type MapData = Static<typeof MapData>;

/** What an analysis request gives back. `id` names it for a re-analysis with another rig or trip. */
export const AnalysisReply = Type.Object({
  id: Type.String(),
  /** Rig and trip as they were sent, no default filled in: what a person edits and saves. */
  said: Type.Object({ rig: RigFile, trip: TripFile }),
  analysis: Analysis,
  map: MapData,
});
export type AnalysisReply = Static<typeof AnalysisReply>;
