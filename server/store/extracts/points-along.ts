import type { Bbox } from '../../contract/common.ts';
import type { MappedFeature } from '../../core/input/sources.ts';
import { numberAt } from '../../core/lists/at.ts';
import type { RouteLine } from '../../core/route/route-line.ts';
import { keyOf } from '../../io/osm/extract/element-key.ts';
import { NOTHING_FAR } from '../../io/osm/extract/far-objects.ts';
import type { RawElement } from '../../io/osm/extract/raw-element.ts';
import type { RawExtract } from '../../io/osm/extract/raw-extract.ts';
import { unite } from '../../io/osm/unite/unite.ts';
import type { ExtractShelf } from './extract-shelf.ts';

type Line = Pick<RouteLine, 'lon' | 'lat'>;

/** Kilometres in a degree of latitude, the least on WGS 84, so that margins err wide. */
const KM_PER_DEGREE = 110.5;
/** A box goes along the route until it is so wide or high, degrees. Ours: some 70 boxes for 1,500 km. */
const BOX_DEG = 0.2;

/**
 * Boxes that together hold all that lies within some kilometres of a route whose vertices are at most 2 km apart, and
 * little more. None crosses the 180th meridian.
 */
export function boxesAlong({ lon, lat }: Line, marginKm: number): Bbox[] {
  const boxes: Bbox[] = [];
  let box: Bbox | null = null;
  for (let at = 0; at < lon.length; at += 1) {
    const [x, y] = [numberAt(lon, at), numberAt(lat, at)];
    const wider: Bbox =
      box === null
        ? [x, y, x, y]
        : [Math.min(box[0], x), Math.min(box[1], y), Math.max(box[2], x), Math.max(box[3], y)];
    if (box !== null && (wider[2] - wider[0] > BOX_DEG || wider[3] - wider[1] > BOX_DEG)) {
      boxes.push(box);
      box = [x, y, x, y];
    } else box = wider;
  }
  if (box !== null) boxes.push(box);
  return boxes.flatMap((one) => withMargin(one, marginKm));
}

/** A box with what lies around it, in two where that crosses the 180th meridian. */
function withMargin([west, south, east, north]: Bbox, marginKm: number): Bbox[] {
  // A vertex is at most 2 km from the next, which may lie in the next box.
  const marginLat = (marginKm + 2) / KM_PER_DEGREE;
  const poleward = Math.min(89.9, Math.max(Math.abs(south), Math.abs(north)) + marginLat);
  const marginLon = Math.min(180, marginLat / Math.cos((poleward * Math.PI) / 180));
  const [from, to] = [west - marginLon, east + marginLon];
  const [low, high] = [Math.max(-90, south - marginLat), Math.min(90, north + marginLat)];
  if (to - from >= 360) return [[-180, low, 180, high]];
  if (from < -180)
    return [
      [-180, low, to, high],
      [from + 360, low, 180, high],
    ];
  if (to > 180)
    return [
      [from, low, 180, high],
      [-180, low, to - 360, high],
    ];
  return [[from, low, to, high]];
}

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
