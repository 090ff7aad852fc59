import { numberAt } from '../lists/at.ts';
import { CellSet, cellsWithin } from '../route/cover/road-cells.ts';
import type { RouteLine } from '../route/route-line.ts';

/** So far off the route its surroundings are read: a little more than the corridor that is usual. Ours. */
export const LOOKED_AT_M = 6_000;

/** Vertices nearer than this to the last one are passed over, degrees of latitude (1.1 km). */
const STRIDE_DEG = 0.01;
/** Cells (0.76 km at least) around a vertex: 6 km, half the way between two vertices that are taken, and what roads and crossings beside a place need. */
const CELLS_AWAY = 11;

/** The cells within reach of a route, in which its surroundings are read. */
export function reachOf({ lon, lat }: Pick<RouteLine, 'lon' | 'lat'>): CellSet {
  const cells = new Set<number>();
  let last: { lon: number; lat: number } | null = null;
  for (let i = 0; i < lon.length; i += 1) {
    const place = { lon: numberAt(lon, i), lat: numberAt(lat, i) };
    const isLast = i + 1 === lon.length;
    const shrink = Math.cos((place.lat * Math.PI) / 180);
    if (
      last !== null &&
      !isLast &&
      Math.hypot((place.lon - last.lon) * shrink, place.lat - last.lat) < STRIDE_DEG
    )
      continue;
    last = place;
    for (const cell of cellsWithin(place.lon, place.lat, CELLS_AWAY)) cells.add(cell);
  }
  return CellSet.of(cells);
}
