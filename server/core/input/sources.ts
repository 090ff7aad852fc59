/**
 * What readers hand to the core: plain values, no Node types.
 * Longitude and latitude are WGS 84 degrees everywhere.
 */
import type { Geometry } from 'geojson';
import type { Commodity } from '../../contract/common.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { Phrase } from '../phrases/phrases.ts';
import type { BarrierKind, ClosedLand } from '../phrases/said/barriers.ts';

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
  /** The file may have been cut off: it covers nothing until the user vouches for it. */
  maybeCut?: true;
  /** What of the area is covered: near the file's roads (cells of road-cells), near its objects; absent: all of it. */
  trimmedBy?: { roads: Int32Array } | 'objects';
  /** Of a general map, which would show an object if it were still there. */
  isGeneral?: boolean;
}

/** The forms of objects: a way is a ring where it ends at its first node, a relation an area or a boundary by its type. */
export type OsmShape = 'point' | 'line' | 'ring' | 'area' | 'boundary';

/** Ground that bears on supplies: also where roads lead over or under a barrier. */
export type SurroundingKind =
  | BarrierKind
  | ClosedLand
  | 'level-crossing'
  | 'road-across'
  | 'ferry'
  | 'lake'
  | 'settlement';

/** A mapped object of the ground that bears on supplies near the route. */
export interface Surrounding {
  /** "way/2" */
  id: string;
  what: SurroundingKind;
  name: string | null;
  /**
   * Longitude and latitude of each position in turn; the closed rings of an area, outer and inner alike; of lines only
   * what is near the route.
   */
  lines: Float64Array[];
  /** Of a ferry: how long it takes, where that is mapped. */
  hours?: number;
  /** Of a river or lake: fresh water all year, as far as its tags say. */
  fresh?: true;
}

/** Where roads run near the route, see `core/surroundings/road-marks`. */
export interface DrawnRoads {
  /** Cells of road-cells.ts, ascending. */
  cells: Int32Array;
  /** Two words of marks for each cell, and whether it is too crowded for them to be complete. */
  marks: Int32Array;
}

/** What the extracts show of the ground that bears on supplies. */
export interface Surroundings {
  objects: readonly Surrounding[];
  /** Of each extract that shows roads. */
  roads: readonly (DrawnRoads & { source: string })[];
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
  /** Absent: nothing of it was read. */
  surroundings?: Surroundings;
}
