import type { Feature, FeatureCollection, Geometry, MultiPolygon, Polygon, Position } from 'geojson';
import type { GroundMark, MapData } from '../../../server/contract/map.ts';

type Ground = Feature<Geometry, GroundMark>;

const EMPTY: FeatureCollection = { type: 'FeatureCollection', features: [] };
export const emptyCollection = (): FeatureCollection => ({ ...EMPTY });

/** The ground as GeoJSON proper: the contract leaves geometries open. */
export const groundFeatures = (map: MapData): Ground[] => map.ground.features as unknown as Ground[];

/**
 * Land to fill: areas given as land, and islands whose coastline closes on itself. OSM draws a coastline with the land
 * on its left (wiki "Tag:natural=coastline"), so a closed one that runs counter-clockwise is an island; others stay lines.
 */
export function landAreas(ground: readonly Ground[]): Feature<Polygon | MultiPolygon>[] {
  const given = ground.flatMap((feature) =>
    feature.properties.what === 'land' &&
    (feature.geometry.type === 'Polygon' || feature.geometry.type === 'MultiPolygon')
      ? [{ type: 'Feature' as const, geometry: feature.geometry, properties: {} }]
      : [],
  );
  if (given.length > 0) return given;
  const coasts = ground.flatMap((feature) =>
    feature.properties.what === 'coast' && feature.geometry.type === 'LineString'
      ? [feature.geometry.coordinates]
      : [],
  );
  return joinEndToEnd(coasts)
    .filter((ring) => ring.length >= 4 && same(ring[0]!, ring.at(-1)!) && turn(ring) > 0)
    .map((ring) => ({
      type: 'Feature',
      geometry: { type: 'Polygon', coordinates: [ring] },
      properties: {},
    }));
}

const same = (a: Position, b: Position): boolean => a[0] === b[0] && a[1] === b[1];
const keyOf = (position: Position): string => `${position[0]} ${position[1]}`;

/** Lines joined where one ends exactly where another begins. */
function joinEndToEnd(lines: readonly Position[][]): Position[][] {
  const open = new Map<string, Position[]>();
  for (const line of lines) if (line.length > 1) open.set(keyOf(line[0]!), line);
  const used = new Set<Position[]>();
  const joined: Position[][] = [];
  // Lines that nothing leads into go first, so that an open chain is taken from its beginning.
  const ends = new Set(lines.map((line) => (line.length > 1 ? keyOf(line.at(-1)!) : '')));
  const ordered = [...open.values()].sort(
    (a, b) => Number(ends.has(keyOf(a[0]!))) - Number(ends.has(keyOf(b[0]!))),
  );
  for (const first of ordered) {
    if (used.has(first)) continue;
    used.add(first);
    const chain = [...first];
    for (let next = open.get(keyOf(chain.at(-1)!)); next !== undefined && !used.has(next); ) {
      used.add(next);
      chain.push(...next.slice(1));
      next = open.get(keyOf(chain.at(-1)!));
    }
    joined.push(chain);
  }
  return joined;
}

/** Twice the signed area in degrees: positive counter-clockwise. Only its sign is used. */
function turn(ring: readonly Position[]): number {
  let sum = 0;
  for (let i = 1; i < ring.length; i++) {
    sum += ring[i - 1]![0]! * ring[i]![1]! - ring[i]![0]! * ring[i - 1]![1]!;
  }
  return sum;
}
