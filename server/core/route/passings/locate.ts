import { geodesicBetween } from '../../geodesy/geodesic.ts';
import type { LonLat } from '../../geodesy/lon-lat.ts';
import { wrapLongitude } from '../../geodesy/longitude.ts';
import { numberAt } from '../../lists/at.ts';
import type { RouteLine } from '../route-line.ts';
import { nearestPlace } from './nearest.ts';

/** The step that holds a place along the route: the last one that starts at or before it. */
export function stepAt(route: RouteLine, atM: number): number {
  let low = 0;
  let high = route.atM.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (numberAt(route.atM, middle) <= atM) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Where the route is at `atM` metres along (clamped to its ends); longitude in -180 to 180. */
export function positionAt(route: RouteLine, atM: number): LonLat {
  const step = stepAt(route, atM);
  const fromM = numberAt(route.atM, step);
  const lengthM = numberAt(route.atM, step + 1) - fromM;
  const share = lengthM === 0 ? 0 : (atM - fromM) / lengthM;
  const { lon, lat } = geodesicBetween(
    numberAt(route.lon, step),
    numberAt(route.lat, step),
    numberAt(route.lon, step + 1),
    numberAt(route.lat, step + 1),
  )(share);
  return { lon: wrapLongitude(lon), lat };
}

/** The single place on the route nearest to a position, however far away; the earlier of ties. */
export function locate(route: RouteLine, lon: number, lat: number): { atM: number; offM: number } {
  const nearest = nearestPlace(route, { lon, lat }, { radiusM: Infinity, soughtOnly: false });
  if (nearest === null) throw new RangeError('a route without a step');
  return nearest;
}
