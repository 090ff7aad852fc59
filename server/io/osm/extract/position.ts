import type { Bbox } from '../../../contract/common.ts';

/** WGS 84 degrees. */
export interface LatLon {
  lat: number;
  lon: number;
}

/** Whether this is a position on earth: WGS 84 degrees, both finite and in range. */
export const isOnEarth = (lon: unknown, lat: unknown): boolean =>
  typeof lon === 'number' && typeof lat === 'number' && lon >= -180 && lon <= 180 && lat >= -90 && lat <= 90;

/** Whether something has a position on earth of its own. */
export const liesOnEarth = (value: unknown): value is LatLon =>
  typeof value === 'object' &&
  value !== null &&
  'lon' in value &&
  'lat' in value &&
  isOnEarth(value.lon, value.lat);

/** Whether a position lies in a box; west > east when the box crosses the 180th meridian. */
export function isInBox([west, south, east, north]: Bbox, lon: number, lat: number): boolean {
  if (lat < south || lat > north) return false;
  return west <= east ? lon >= west && lon <= east : lon >= west || lon <= east;
}

/**
 * The middle of positions [lon, lat] by plain means of degrees; null when there are none. Right to a few metres for
 * what lies within some kilometres; the 180th meridian may lie between them, the poles may not.
 */
export function meanPosition(positions: readonly (readonly [number, number])[]): [number, number] | null {
  const first = positions[0];
  if (first === undefined) return null;
  let lonOff = 0;
  let lat = 0;
  for (const position of positions) {
    lonOff += nearerTurn(position[0] - first[0]);
    lat += position[1];
  }
  const lon = first[0] + lonOff / positions.length;
  return [lon > 180 ? lon - 360 : lon < -180 ? lon + 360 : lon, lat / positions.length];
}

/** A difference of longitudes, degrees, the short way round. */
export const nearerTurn = (degrees: number): number =>
  degrees > 180 ? degrees - 360 : degrees < -180 ? degrees + 360 : degrees;
