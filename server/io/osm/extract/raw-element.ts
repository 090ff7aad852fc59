import type { LatLon } from './position.ts';

export type OsmType = 'node' | 'way' | 'relation';

export interface Member {
  type: OsmType;
  ref: number;
  role: string;
  lat?: number;
  lon?: number;
  geometry?: unknown[];
}

/** An OSM element as a reader gives it, in the manner of Overpass JSON, which osmtogeojson takes as it is. */
export interface RawElement {
  type: OsmType;
  id: number;
  lat?: number;
  lon?: number;
  nodes?: number[];
  members?: Member[];
  tags?: Record<string, string>;
  version?: number;
  /** ISO 8601. */
  timestamp?: string;
  /** Overpass `out center`, `out geom`. */
  center?: LatLon;
  geometry?: (LatLon | null)[];
  bounds?: { minlat: number; minlon: number; maxlat: number; maxlon: number };
}

/** A node that has a position, on earth or not. */
export type RawNode = RawElement & LatLon & { type: 'node' };

export const isPlacedNode = (element: RawElement): element is RawNode =>
  element.type === 'node' && element.lat !== undefined && element.lon !== undefined;

/** An element as read, and whether the file says that it is deleted. */
export interface ParsedElement<Kind extends RawElement = RawElement> {
  element: Kind;
  deleted: boolean;
}
