import type { Geometry } from 'geojson';
import type { Commodity } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import type { SupplyFindings } from '../../phrases/supply.ts';
import type { ClosedGround } from '../../surroundings/enclosing.ts';

/** A supply at one place, before it is judged. */
export interface SupplyFeature {
  id: string;
  /** Ids of nodes that were merged into this area. */
  alsoIds: string[];
  lon: number;
  lat: number;
  /** The object's own tags, filled in by those of merged nodes. */
  tags: Tags;
  /** ISO time; the older one where objects were merged. */
  editedAt: string | null;
  /** Neither the object nor its file is dated. */
  undated?: true;
  /** ISO date of the file it was read from: nothing of it is newer. */
  mapOn?: string;
  /** A newer general extract that covers its place and has it not. */
  goneIn?: string;
  /** The closed grounds on which it lies. */
  closedGround?: readonly ClosedGround[];
  wanted: Commodity[];
  /** A river or lake that the route comes by, in place of an object that is a supply by its kind. */
  surface?: 'river' | 'lake';
  /** Its tags as the map has them, where the user corrected them. */
  mappedTags?: Tags;
  /** What the user corrected of it, the oldest first. */
  corrections?: readonly SupplyFindings['corrected'][];
  /** For each merged node whose tags differ from the area's: the tags as that node has them, and in which keys. */
  otherReadings?: OtherReading[];
}

export interface OtherReading {
  id: string;
  tags: Tags;
  keys: string[];
}

/** A feature on its way, with the geometry that it was placed on. */
export interface PlacedFeature {
  feature: SupplyFeature;
  geometry: Geometry;
  /** Its kinds, by which nodes are merged into areas. */
  kinds: string[];
}
