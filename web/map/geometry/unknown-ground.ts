import { difference } from '@turf/turf';
import type { Feature, MultiPolygon, Polygon, Position } from 'geojson';
import type { MapData } from '../../../server/contract/answers/map.ts';

/** How far round the route and the extracts it is said that nothing is known, degrees: more than a screen shows of it. */
const AROUND_DEG = 40;
const MAP_END = 85;

const area = (coordinates: Position[][]): Feature<Polygon> => ({
  type: 'Feature',
  geometry: { type: 'Polygon', coordinates },
  properties: {},
});

/** Each extract's outline, as areas. */
export const extractAreas = (map: MapData): Feature<Polygon>[] =>
  map.extracts.flatMap(({ rings }) => rings.filter((ring) => ring.length >= 4).map((ring) => area([ring])));

/** The ground of which no extract says anything, round about the route; null where there is no extract at all. */
export function unknownGround(map: MapData): Feature<Polygon | MultiPolygon> | null {
  const known = extractAreas(map);
  if (known.length === 0) return null;
  const positions = [
    ...map.line.coordinates,
    ...known.flatMap(({ geometry }) => geometry.coordinates.flat()),
  ];
  const reach = (axis: 0 | 1): [number, number] => {
    const along = positions.map((position) => position[axis] ?? 0);
    return [
      along.reduce((least, one) => Math.min(least, one), Number.POSITIVE_INFINITY) - AROUND_DEG,
      along.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY) + AROUND_DEG,
    ];
  };
  const [west, east] = reach(0);
  const [south, north] = reach(1).map((lat) => Math.min(MAP_END, Math.max(-MAP_END, lat))) as [
    number,
    number,
  ];
  const around = area([
    [
      [west, south],
      [east, south],
      [east, north],
      [west, north],
      [west, south],
    ],
  ]);
  return difference({ type: 'FeatureCollection', features: [around, ...known] });
}
