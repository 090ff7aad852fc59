import Flatbush from 'flatbush';
import type { Geometry } from 'geojson';
import { at } from '../../lists/at.ts';
import { CHECK_KEYS } from '../tags/age.ts';
import { isDeciding } from '../tags/vocabulary.ts';
import { wantedFor } from '../tags/wanted.ts';
import { isInside, type UnwrappedPolygon, unwrapPolygon } from './place.ts';
import type { PlacedFeature, SupplyFeature } from './supply-feature.ts';

/** Longitudes of an area over the 180th meridian run on past it: a node is sought at each turn. */
const TURNS = [0, 360, -360];

interface Area {
  placed: PlacedFeature;
  polygons: UnwrappedPolygon[];
  /** Size of the box, square degrees: of nested areas the smallest takes the node. */
  size: number;
}

/** The polygons of an area; a closed way of a supply kind is one as well, however it was converted. */
function polygonsOf(geometry: Geometry, hasKind: boolean): UnwrappedPolygon[] {
  switch (geometry.type) {
    case 'Polygon':
      return [unwrapPolygon(geometry.coordinates)];
    case 'MultiPolygon':
      return geometry.coordinates.map(unwrapPolygon);
    case 'GeometryCollection':
      return geometry.geometries.flatMap((part) => polygonsOf(part, hasKind));
    case 'LineString': {
      const first = geometry.coordinates[0];
      const last = geometry.coordinates.at(-1);
      const closed = geometry.coordinates.length > 3 && first?.[0] === last?.[0] && first?.[1] === last?.[1];
      return closed && hasKind ? [unwrapPolygon([geometry.coordinates])] : [];
    }
    default:
      return [];
  }
}

function boxOf(polygons: readonly UnwrappedPolygon[]): [number, number, number, number] {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [lon, lat] of polygons.flatMap((polygon) => polygon[0] ?? [])) {
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  return [west, south, east, north];
}

const olderOf = (a: string | null, b: string | null): string | null =>
  a === null ? b : b === null ? a : a < b ? a : b;

/** Puts a node into the area that holds it: the area's own tags stand, the node's fill in, differences are kept. */
function absorb(area: SupplyFeature, node: SupplyFeature): SupplyFeature {
  const keys = Object.keys(node.tags).filter(
    (key) => isDeciding(key) && area.tags[key] !== undefined && area.tags[key] !== node.tags[key],
  );
  const tags: Record<string, string> = { ...node.tags, ...area.tags };
  for (const key of CHECK_KEYS) {
    // Texts of one form (2024-05-01) compare like dates: the older look is the one to be held to.
    const older = olderOf(area.tags[key] ?? null, node.tags[key] ?? null);
    if (older !== null) tags[key] = older;
  }
  const otherReadings = [
    ...(area.otherReadings ?? []),
    ...(keys.length === 0 ? [] : [{ id: node.id, tags: { ...area.tags, ...node.tags }, keys }]),
  ];
  return {
    ...area,
    alsoIds: [...area.alsoIds, node.id, ...node.alsoIds],
    tags,
    editedAt: olderOf(area.editedAt, node.editedAt),
    wanted: wantedFor(tags),
    ...(otherReadings.length === 0 ? {} : { otherReadings }),
  };
}

/** The areas that features of a kind take up, found by place. */
class Areas {
  readonly #areas: Area[] = [];
  readonly #index: Flatbush | null;

  constructor(placed: readonly PlacedFeature[]) {
    const boxes: [number, number, number, number][] = [];
    for (const one of placed) {
      if (one.kinds.length === 0) continue;
      const polygons = polygonsOf(one.geometry, true);
      if (polygons.length === 0) continue;
      const box = boxOf(polygons);
      boxes.push(box);
      this.#areas.push({ placed: one, polygons, size: (box[2] - box[0]) * (box[3] - box[1]) });
    }
    this.#index = boxes.length === 0 ? null : new Flatbush(boxes.length);
    for (const [west, south, east, north] of boxes) this.#index?.add(west, south, east, north);
    this.#index?.finish();
  }

  /** Those in whose box the place lies, with the longitude at that turn. */
  *around(lon: number, lat: number): Generator<{ area: Area; lon: number }> {
    for (const turn of TURNS) {
      const turned = lon + turn;
      for (const i of this.#index?.search(turned, lat, turned, lat) ?? []) {
        yield { area: at(this.#areas, i), lon: turned };
      }
    }
  }
}

/** The smaller of two areas; of two alike that with the lower id. */
function smallerOf(a: Area | null, b: Area): Area {
  if (a === null || b.size < a.size) return b;
  return b.size === a.size && b.placed.feature.id < a.placed.feature.id ? b : a;
}

/** The area that takes a node in, if one does. */
function homeOf({ feature: node, geometry, kinds }: PlacedFeature, areas: Areas): Area | null {
  if (geometry.type !== 'Point' || !node.id.startsWith('node/') || kinds.length === 0) return null;
  let home: Area | null = null;
  for (const { area, lon } of areas.around(node.lon, node.lat)) {
    if (!area.placed.kinds.some((kind) => kinds.includes(kind))) continue;
    // An area whose own tags would hide one of the node's supplies does not take it in.
    const together = wantedFor({ ...node.tags, ...area.placed.feature.tags });
    if (!node.wanted.every((commodity) => together.includes(commodity))) continue;
    if (area.polygons.some((polygon) => isInside(polygon, lon, node.lat))) home = smallerOf(home, area);
  }
  return home;
}

/**
 * Merges each node into the area of the same kind that holds it, or on whose edge it lies; of several the smallest.
 * Features come back in their order, without the merged nodes. Nodes are merged in the order of their ids, so that the
 * order of the input does not matter.
 */
export function mergeNodes(placed: readonly PlacedFeature[]): SupplyFeature[] {
  const areas = new Areas(placed);
  const nodesByArea = new Map<SupplyFeature, SupplyFeature[]>();
  const merged = new Set<SupplyFeature>();
  for (const one of placed) {
    const home = homeOf(one, areas)?.placed.feature;
    if (home === undefined) continue;
    merged.add(one.feature);
    nodesByArea.set(home, [...(nodesByArea.get(home) ?? []), one.feature]);
  }
  return placed
    .filter(({ feature }) => !merged.has(feature))
    .map(({ feature }) => {
      const nodes = nodesByArea.get(feature) ?? [];
      const inOrder = [...nodes].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
      return inOrder.reduce(absorb, feature);
    });
}
