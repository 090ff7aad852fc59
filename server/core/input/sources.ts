/**
 * What readers hand to the core: plain values, no Node types.
 * Longitude and latitude are WGS 84 degrees everywhere.
 */
import type { Geometry } from 'geojson';
import type { Commodity } from '../../contract/common.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { Phrase } from '../phrases/phrases.ts';

/** A run of route points without a break. Arrays are of equal length; `ele` is NaN where the file has none. */
export interface RouteSegment {
  lon: Float64Array;
  lat: Float64Array;
  ele: Float64Array;
}

/** A <trk> or a <rte> with its points. */
export interface RoutePart {
  kind: 'track' | 'route';
  name: string | null;
  segments: RouteSegment[];
}

export interface Waypoint {
  lon: number;
  lat: number;
  ele: number | null;
  name: string | null;
  symbol: string | null;
  type: string | null;
  comment: string | null;
  description: string | null;
  /** ISO time as written, null when absent or a filler (1970). */
  time: string | null;
}

/** A GPX file as read. Cautions tell what was passed over, with its place in the file. */
export interface RouteDocument {
  name: string | null;
  parts: RoutePart[];
  waypoints: Waypoint[];
  cautions: Caution[];
}

export type Tags = Readonly<Record<string, string>>;

/** An object of an extract (or an own note) with its mapped geometry, before it is classified. */
export interface MappedFeature {
  /** "node/1", "way/2", "relation/3", "own/…" */
  id: string;
  geometry: Geometry;
  tags: Tags;
  /** ISO time of the last edit, null when the source does not tell. */
  editedAt: string | null;
  /** The extract that it was read from; absent for what the user marked on the route. */
  source?: string;
  /** What other files have of it in tags, where nothing tells which is the newer. */
  otherTags?: readonly Tags[];
  /** All extracts that show it, where there are several. */
  seenIn?: readonly string[];
}

/** What a map file says of itself. */
export interface MapPapers {
  /** ISO time for which its content holds; null when it does not tell. */
  asOf: string | null;
  /** Whom to credit, and under what terms the data are; null when it does not tell. */
  attribution: string | null;
  licence: string | null;
}

/** An extract as it was read. */
export interface MapExtract extends MapPapers {
  /** The file as the user named it. */
  source: string;
  /** ISO time of the newest edit among its supplies near the route; null when none is dated. */
  newestEdit: string | null;
}

/** A place for which an extract would show every supply of that commodity if there were one. */
export interface CoverArea {
  commodity: Commodity;
  /** Closed outer rings, [lon, lat]; an area over the 180th meridian comes as two. */
  rings: [number, number][][];
  /** True when no bounds were declared and the hull of the objects stands in. */
  guessed: boolean;
  source: string;
  /** What of the area is covered: near the file's roads (cells of road-cells), near its objects; absent: all of it. */
  trimmedBy?: { roads: Int32Array } | 'objects';
  /** Of a general map, which would show an object if it were still there. */
  isGeneral?: boolean;
}

/** An object that was passed over, and why. */
export interface PassedOver {
  id: string;
  reason: Phrase;
}

/** What all the extracts together hold. */
export interface Supplies {
  extracts: MapExtract[];
  features: MappedFeature[];
  cover: CoverArea[];
  skipped: PassedOver[];
  cautions: Caution[];
}
