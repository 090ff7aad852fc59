import type { Feature } from 'geojson';
import type { GroundMark } from '../contract/answers/map.ts';
import type { Bbox } from '../contract/common.ts';
import type { RouteDocument, Supplies } from '../core/input/sources.ts';

/** What one extract reaches over and holds. */
export interface ExtractExtent {
  /** The file as the user named it. */
  source: string;
  /** Box of its declared bounds, else of its objects; null when it holds nothing with a place. */
  bbox: Bbox | null;
  /** Objects in it that may supply fuel or water. */
  objects: number;
}

export type GroundFeature = Feature<Feature['geometry'], GroundMark>;

/** A night's place as the user marked it. */
export interface Camp {
  lon: number;
  lat: number;
  name: string | null;
}

/** A route with its extracts as read: plain values that can be cloned, good for any number of analyses. */
export interface LoadedTrip {
  document: RouteDocument;
  supplies: Supplies;
  extents: ExtractExtent[];
  ground: GroundFeature[];
  camps: Camp[];
  /** Set when the land is invented and must not be driven by. */
  notice: string | null;
}
