export type OsmType = 'node' | 'way' | 'relation';

/** An OSM element as a reader gives it, in the manner of Overpass JSON, which osmtogeojson takes as it is. */
export interface RawElement {
  type: OsmType;
  id: number;
  lat?: number;
  lon?: number;
  nodes?: number[];
  members?: { type: OsmType; ref: number; role: string; lat?: number; lon?: number; geometry?: unknown[] }[];
  tags?: Record<string, string>;
  version?: number;
  /** ISO 8601. */
  timestamp?: string;
  /** Overpass `out center`, `out geom`. */
  center?: { lat: number; lon: number };
  geometry?: ({ lat: number; lon: number } | null)[];
  bounds?: { minlat: number; minlon: number; maxlat: number; maxlon: number };
}

/** An element as read, and whether the file says that it is deleted. */
export interface ParsedElement {
  element: RawElement;
  deleted: boolean;
}
