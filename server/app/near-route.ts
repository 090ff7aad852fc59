import type { Bbox } from '../contract/common.ts';
import { numberAt } from '../core/lists/at.ts';
import { bandOf } from '../core/route/cover/near-roads.ts';
import type { RouteLine } from '../core/route/route-line.ts';
import { reachOf } from '../core/surroundings/reach.ts';

/** Kilometres in a degree of latitude, the least on WGS 84 (110.57 at the equator), so that margins err wide. */
const KM_PER_DEGREE = 110.5;
/** Side of the grid's cells, degrees. */
const CELL_DEG = 0.25;
const COLUMNS = 360 / CELL_DEG;
/** One more for the North Pole itself. */
const ROWS = 180 / CELL_DEG + 1;
/** A box of more cells than this is near anything: it is not worth the walk. */
const MAX_WALK = 10_000;

/**
 * The land within some kilometres of a route as marked cells of a grid over the Earth, a bit each (130 KB). Plain, so
 * that it can be sent to other threads.
 */
export interface NearGrid {
  readonly bits: Uint8Array;
  /** In what land the ground around the route is read; absent: nothing of it is. */
  readonly around?: LandAround;
}

/** Cells of a finer grid along a route, each as the slots of a CellSet. */
export interface LandAround {
  /** Beside the route: where roads tell what an extract covers. */
  readonly band: Int32Array;
  /** Farther off: where roads and what lies between are read for supplies. */
  readonly reach: Int32Array;
}

/** Tells whether a box comes within some kilometres of a route; errs on the side of near. */
export type NearRoute = (bbox: Bbox) => boolean;

export function nearRoute(route: Pick<RouteLine, 'lon' | 'lat'>, marginKm: number): NearRoute {
  const grid = nearGrid(route, marginKm);
  return (bbox) => isNear(grid, bbox);
}

/** Lays a grid over the route and its margin: each vertex (they are at most 2 km apart) marks the cells within reach. */
export function nearGrid(route: Pick<RouteLine, 'lon' | 'lat'>, marginKm: number): NearGrid {
  const bits = new Uint8Array((ROWS * COLUMNS) / 8);
  const marginLat = (marginKm + 2) / KM_PER_DEGREE;
  let seen: { lon: number; lat: number } | null = null;
  for (let i = 0; i < route.lon.length; i += 1) {
    const lon = numberAt(route.lon, i);
    const lat = numberAt(route.lat, i);
    // Within a tenth of a cell of the last marked vertex nothing new is reached.
    if (seen !== null && Math.abs(lon - seen.lon) + Math.abs(lat - seen.lat) < CELL_DEG / 10) continue;
    seen = { lon, lat };
    const reachLat = marginLat + CELL_DEG / 10;
    const poleward = Math.abs(lat) + reachLat;
    const cosine = Math.cos((poleward * Math.PI) / 180);
    // Within reach of a pole every longitude is.
    const reachLon = poleward >= 90 ? 180 : Math.min(180, reachLat / cosine);
    for (const cell of cellsOf(lon - reachLon, lat - reachLat, lon + reachLon, lat + reachLat))
      bits[cell >> 3] = byteAt(bits, cell) | bitOf(cell);
  }
  return { bits };
}

/** The cells along a route in which the ground is read. */
export const landAround = (route: Pick<RouteLine, 'lon' | 'lat'>): LandAround => ({
  band: bandOf(route).slots,
  reach: reachOf(route).slots,
});

/** Whether a box (west > east over the 180th meridian) touches a marked cell. A very large box always does. */
export function isNear({ bits }: NearGrid, [west, south, east, north]: Bbox): boolean {
  const wide = east < west ? east + 360 : east;
  if (((wide - west) / CELL_DEG) * ((north - south) / CELL_DEG) > MAX_WALK) return true;
  for (const cell of cellsOf(west, south, wide, north))
    if ((byteAt(bits, cell) & bitOf(cell)) !== 0) return true;
  return false;
}

/** Whether a place within ±180 and ±90 degrees lies in a marked cell; for the millions of places of a file. */
export function isPlaceNear({ bits }: NearGrid, lon: number, lat: number): boolean {
  const column = Math.floor(lon / CELL_DEG);
  const cell = rowOf(lat) * COLUMNS + (column < 0 ? column + COLUMNS : column);
  return (byteAt(bits, cell) & bitOf(cell)) !== 0;
}

const byteAt = (bits: Uint8Array, cell: number): number => bits[cell >> 3] ?? 0;
const bitOf = (cell: number): number => 1 << (cell & 7);

function* cellsOf(west: number, south: number, east: number, north: number): Generator<number> {
  const firstColumn = Math.floor(west / CELL_DEG);
  const lastColumn = Math.min(Math.floor(east / CELL_DEG), firstColumn + COLUMNS - 1);
  const lastRow = Math.min(rowOf(north), ROWS - 1);
  for (let row = Math.max(0, rowOf(south)); row <= lastRow; row += 1) {
    for (let column = firstColumn; column <= lastColumn; column += 1) {
      yield row * COLUMNS + (((column % COLUMNS) + COLUMNS) % COLUMNS);
    }
  }
}

/** From the South Pole up. */
const rowOf = (lat: number): number => Math.floor((lat + 90) / CELL_DEG);

/** Whether a box comes within some kilometres of the route, vertex by vertex: exact to a kilometre, on the side of near. */
export function touchesRoute(route: Pick<RouteLine, 'lon' | 'lat'>, bbox: Bbox, withinKm: number): boolean {
  // Vertices are at most 2 km apart, so no place of the line is more than 1 km from one.
  const reachKm = withinKm + 1;
  for (let i = 0; i < route.lon.length; i += 1) if (kmFromVertex(route, i, bbox) <= reachKm) return true;
  return false;
}

/** How far off the route a box lies, 0 where they touch: exact to a kilometre within some hundred. */
export function kmOffRoute(route: Pick<RouteLine, 'lon' | 'lat'>, bbox: Bbox): number {
  let least = Infinity;
  for (let i = 0; i < route.lon.length; i += 1) least = Math.min(least, kmFromVertex(route, i, bbox));
  return least;
}

/** How far a box lies from a vertex of a route, on a plane. */
function kmFromVertex({ lon, lat }: Pick<RouteLine, 'lon' | 'lat'>, i: number, bbox: Bbox): number {
  const [west, south, east, north] = bbox;
  const width = east < west ? east + 360 - west : east - west;
  const vertexLat = numberAt(lat, i);
  const offLat = Math.max(0, south - vertexLat, vertexLat - north) * KM_PER_DEGREE;
  const eastward = (((numberAt(lon, i) - west) % 360) + 360) % 360;
  const lonGap = eastward <= width ? 0 : Math.min(eastward - width, 360 - eastward);
  const offLon = lonGap * KM_PER_DEGREE * Math.cos((vertexLat * Math.PI) / 180);
  return Math.hypot(offLat, offLon);
}

/** The box around a geometry's positions; null when it has none. Longitudes are taken as they stand. */
export function boxOf(geometry: { type: string; coordinates?: unknown; geometries?: unknown }): Bbox | null {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  const walk = (value: unknown): void => {
    if (!Array.isArray(value)) return;
    if (typeof value[0] === 'number' && typeof value[1] === 'number') {
      west = Math.min(west, value[0]);
      east = Math.max(east, value[0]);
      south = Math.min(south, value[1]);
      north = Math.max(north, value[1]);
      return;
    }
    for (const member of value) walk(member);
  };
  walk(geometry.coordinates);
  if (Array.isArray(geometry.geometries)) {
    for (const member of geometry.geometries) walk((member as { coordinates?: unknown }).coordinates);
  }
  return west <= east && south <= north ? [west, south, east, north] : null;
}
