import type { Geometry } from 'geojson';
import type { Commodity } from '../../contract/common.ts';
import type { MappedFeature, Tags } from '../sources.ts';
import { hostOf } from './hosts.ts';
import { ANY_WITH_WATER } from './kinds.ts';
import { matchKinds } from './match-kinds.ts';
import { mergeNodes } from './merge.ts';
import { placeOf } from './place.ts';
import { wantedFor } from './wanted.ts';

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
  wanted: Commodity[];
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

/** The kinds of an object as merging knows them; former ones are the same kind as live ones. */
export function kindsOf(tags: Tags): string[] {
  const kinds: string[] = [];
  for (const { rule } of matchKinds(tags)) {
    if (rule !== ANY_WITH_WATER) kinds.push(rule.key);
    else {
      const host = hostOf(tags);
      if (host !== null) kinds.push(`water at ${host}`);
    }
  }
  return kinds;
}

/**
 * Mapped objects as supplies, each at one place on its geometry. A node inside the mapped area of an object of the
 * same kind becomes part of that area; nothing else is merged. Every object given is in the result: as a feature, in the `alsoIds` of
 * one, or in `skipped` with the reason.
 */
export function toSupplyFeatures(mapped: readonly MappedFeature[]): {
  features: SupplyFeature[];
  skipped: { id: string; reason: string }[];
} {
  const skipped: { id: string; reason: string }[] = [];
  const placed: PlacedFeature[] = [];
  for (const { id, geometry, tags, editedAt } of mapped) {
    const wanted = wantedFor(tags);
    if (wanted.length === 0) {
      skipped.push({ id, reason: 'its tags name no supply of fuel or water' });
      continue;
    }
    const place = placeOf(geometry);
    if (place === null) {
      skipped.push({
        id,
        reason: 'it has no place on the Earth: no coordinates, or such as are out of range',
      });
      continue;
    }
    const feature: SupplyFeature = { id, alsoIds: [], lon: place[0], lat: place[1], tags, editedAt, wanted };
    placed.push({ feature, geometry, kinds: kindsOf(tags) });
  }
  return { features: mergeNodes(placed), skipped };
}
