import { geodesicBetween } from '../geodesy/geodesic.ts';
import { wrapLongitude } from '../geodesy/longitude.ts';
import { nearestPlace } from './nearest.ts';
import { indexRoute } from './route-index.ts';
import type { RouteLine } from './route-line.ts';

/** Metres along the route as route km. */
export const kmOf = (atM: number): number => atM / 1000;

/** The step that holds a place along the route: the last one that starts at or before it. */
export function stepAt(route: RouteLine, atM: number): number {
  let low = 0;
  let high = route.atM.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (route.atM[middle]! <= atM) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Where the route is at `atM` metres along (clamped to its ends); longitude in -180 to 180. */
export function positionAt(route: RouteLine, atM: number): { lon: number; lat: number } {
  const step = stepAt(route, atM);
  const fromM = route.atM[step]!;
  const lengthM = route.atM[step + 1]! - fromM;
  const share = lengthM === 0 ? 0 : (atM - fromM) / lengthM;
  const { lon, lat } = geodesicBetween(
    route.lon[step]!,
    route.lat[step]!,
    route.lon[step + 1]!,
    route.lat[step + 1]!,
  )(share);
  return { lon: wrapLongitude(lon), lat };
}

/** The single place on the route nearest to a position, however far away; the earlier of ties. */
export function locate(route: RouteLine, lon: number, lat: number): { atM: number; offM: number } {
  // A route has at least one step, so there is always a nearest place.
  return nearestPlace(route, indexRoute(route), lon, lat, Infinity, false)!;
}
