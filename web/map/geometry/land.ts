import type { Feature, FeatureCollection, Geometry, MultiPolygon, Polygon, Position } from 'geojson';
import type { GroundMark, MapData } from '../../../server/contract/answers/map.ts';
import { pairsOf } from '../../kit/pairs.ts';

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
    .filter(({ from, to, positions }) => positions.length >= 4 && from === to && turn(positions) > 0)
    .map(({ positions }) => ({
      type: 'Feature',
      geometry: { type: 'Polygon', coordinates: [positions] },
      properties: {},
    }));
}

/** A line with its two ends, as keys that are alike where the positions are. */
interface Stretch {
  from: string;
  to: string;
  positions: Position[];
}

const keyOf = (position: Position): string => `${position[0]} ${position[1]}`;

/** A line of two positions or more; a shorter one goes nowhere. */
function stretchOf(positions: Position[]): Stretch[] {
  const [first] = positions;
  const last = positions.at(-1);
  if (positions.length < 2 || first === undefined || last === undefined) return [];
  return [{ from: keyOf(first), to: keyOf(last), positions }];
}

/** Lines joined where one ends exactly where another begins. */
function joinEndToEnd(lines: readonly Position[][]): Stretch[] {
  const stretches = lines.flatMap(stretchOf);
  const open = new Map(stretches.map((stretch) => [stretch.from, stretch]));
  const used = new Set<Stretch>();
  const joined: Stretch[] = [];
  // Lines that nothing leads into go first, so that an open chain is taken from its beginning.
  const ends = new Set(stretches.map(({ to }) => to));
  const ordered = [...open.values()].sort((a, b) => Number(ends.has(a.from)) - Number(ends.has(b.from)));
  for (const first of ordered) {
    if (used.has(first)) continue;
    used.add(first);
    const chain = { ...first, positions: [...first.positions] };
    for (let next = open.get(chain.to); next !== undefined && !used.has(next); next = open.get(next.to)) {
      used.add(next);
      chain.positions.push(...next.positions.slice(1));
      chain.to = next.to;
    }
    joined.push(chain);
  }
  return joined;
}

/** Twice the signed area in degrees: positive counter-clockwise. Only its sign is used. */
function turn(ring: readonly Position[]): number {
  let sum = 0;
  for (const [[ax = 0, ay = 0], [bx = 0, by = 0]] of pairsOf(ring)) sum += ax * by - bx * ay;
  return sum;
}
