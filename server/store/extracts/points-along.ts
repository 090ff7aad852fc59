import type { MappedFeature } from '../../core/input/sources.ts';
import { boxesAlong } from '../../core/route/cover/boxes-along.ts';
import type { RouteLine } from '../../core/route/route-line.ts';
import { keyOf } from '../../io/osm/extract/element-key.ts';
import { NOTHING_FAR } from '../../io/osm/extract/far-objects.ts';
import type { RawElement } from '../../io/osm/extract/raw-element.ts';
import type { RawExtract } from '../../io/osm/extract/raw-extract.ts';
import { unite } from '../../io/osm/unite/unite.ts';
import type { ExtractShelf } from './extract-shelf.ts';

type Line = Pick<RouteLine, 'lon' | 'lat'>;

/** What a row of a point holds. */
type Point = { element: RawElement; lending?: RawElement[] } | { feature: MappedFeature };

const pointOf = (json: string): Point => JSON.parse(json) as Point;

/**
 * The supplies of a kept extract within some kilometres of a route, and some that are little farther, by their spatial
 * key: as reading its file gives them.
 */
export function suppliesAlong(
  shelf: ExtractShelf,
  id: string,
  route: Line,
  marginKm: number,
): MappedFeature[] {
  const extract = shelf.get(id);
  if (extract === null) return [];
  const rows = shelf.pointsIn(id, boxesAlong(route, marginKm));
  const elements = new Map<string, RawElement>();
  const wanted = new Set<string>();
  const features: MappedFeature[] = [];
  for (const point of rows.map(pointOf)) {
    if ('feature' in point) features.push(point.feature);
    else {
      elements.set(keyOf(point.element), point.element);
      wanted.add(keyOf(point.element));
      for (const lent of point.lending ?? []) {
        const key = keyOf(lent);
        // A wanted one that lends its place as well keeps its tags.
        if (!elements.has(key)) elements.set(key, lent);
      }
    }
  }
  const read: RawExtract = {
    ...NOTHING_ELSE,
    source: extract.name,
    papers: { asOf: extract.asOf, attribution: extract.attribution, licence: extract.licence },
    elements: [...elements.values()],
    wanted,
    features,
  };
  return unite([read], [], []).features;
}

/** An extract of which only the supplies are asked for. */
const NOTHING_ELSE: Omit<RawExtract, 'source' | 'papers' | 'elements' | 'wanted' | 'features'> = {
  format: 'overpass-json',
  far: NOTHING_FAR,
  unwanted: NOTHING_FAR,
  deleted: NOTHING_FAR,
  bounds: null,
  hull: null,
  shows: { fuel: false, water: false, general: false },
  roads: null,
  surroundings: [],
  drawnRoads: null,
  counts: { nodes: 0, ways: 0, relations: 0 },
  ground: [],
  skipped: [],
  cautions: [],
};
