import type { NearGrid } from '../../../app/near-route.ts';
import type { Bbox } from '../../../contract/common.ts';
import type {
  DrawnRoads,
  MapPapers,
  MappedFeature,
  PassedOver,
  Surrounding,
} from '../../../core/input/sources.ts';
import type { Caution } from '../../../core/phrases/cautions.ts';
import type { FarObjects } from './far-objects.ts';
import type { RawElement } from './raw-element.ts';

export type ExtractFormat = 'pbf' | 'osm-xml' | 'overpass-json' | 'geojson' | 'gpx-waypoints';

/** One extract after filtering: what concerns supply, with the nodes and members it needs. */
export interface RawExtract {
  source: string;
  format: ExtractFormat;
  papers: MapPapers;
  /** Wanted elements and those that only lend them geometry. */
  elements: RawElement[];
  /** "node/1": the wanted ones among `elements`; those that only lend geometry are not here. */
  wanted: Set<string>;
  /** Wanted objects that lie off `ReadOptions.near`: counted here and not kept otherwise. */
  far: FarObjects;
  /**
   * Near objects that the file has and that supply nothing, as far as it tells their age: one that did in an older file
   * does so no more.
   */
  unwanted: FarObjects;
  /** Objects that the file says are deleted. */
  deleted: FarObjects;
  /** Features that came ready made (GeoJSON, GPX waypoints). */
  features: MappedFeature[];
  /** Declared bounds, null when the file declares none. */
  bounds: Bbox | null;
  /** Further declared bounds, where a file declares several boxes. */
  moreBounds?: Bbox[];
  /**
   * Hull of all object positions, closed ring of [lon, lat], when no bounds are declared and there is one. Longitudes
   * run on past 180 where the objects lie on both sides of the 180th meridian.
   */
  hull: [number, number][] | null;
  /** Whether the file shows objects of a commodity at all, and whether it is a general map (holds roads or places). */
  shows: { fuel: boolean; water: boolean; general: boolean };
  /** Cells near the route that its roads run through (core/route/road-cells); null where that is not told. */
  roads: Int32Array | null;
  /** Ground near the route that bears on supplies: what lies between, closed land. */
  surroundings: Surrounding[];
  /** Where its roads run near the route, by parts of cells; null where that is not told. */
  drawnRoads: DrawnRoads | null;
  /** Elements in the file, wanted or not; 0 where the format has no such thing. */
  counts: { nodes: number; ways: number; relations: number };
  /** Roads, places and coast for the map's ground, with their nodes; empty unless asked for. */
  ground: RawElement[];
  skipped: PassedOver[];
  cautions: Caution[];
}

export interface ReadOptions {
  /** The file's name as the user gave it, for messages. */
  source: string;
  /** Keep ground features that touch this box; null for none. */
  ground: Bbox | null;
  /**
   * Keep wanted objects that may touch this land, and those whose place is not known; null or absent keeps all. What the
   * file shows and covers is judged by all of it either way.
   */
  near?: NearGrid | null;
  /** Called now and then with bytes read and bytes in all (null when unknown). */
  onProgress?: (doneBytes: number, totalBytes: number | null) => void;
  signal?: AbortSignal;
}
