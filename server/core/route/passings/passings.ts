import type { LonLat } from '../../geodesy/lon-lat.ts';
import { indexRoute, type RouteIndex, runsOf } from '../route-index.ts';
import { metresOnStep, type RouteLine } from '../route-line.ts';
import { tellTurns } from './distance-turns.ts';
import { nearestPlace } from './nearest.ts';
import { PassingFilter, PROMINENCE_M } from './passing-filter.ts';
import { stretchesNear } from './stretches-near.ts';
import { viewpointAt } from './viewpoint.ts';

/** One place where the route comes by a point: `point` into the points given, metres along and off the route. */
export interface RoutePassing {
  readonly point: number;
  readonly atM: number;
  readonly offM: number;
}

const byPlaceThenPoint = (a: RoutePassing, b: RoutePassing) => a.atM - b.atM || a.point - b.point;

function passingsBy(
  route: RouteLine,
  index: RouteIndex,
  { lon, lat, point }: LonLat & { point: number },
  corridorM: number,
): RoutePassing[] {
  const from = viewpointAt({ lon, lat });
  const stretches = stretchesNear(index, from, corridorM + PROMINENCE_M);
  const passings: RoutePassing[] = [];
  const filter = new PassingFilter(corridorM, (step, share, offM) => {
    passings.push({ point, atM: metresOnStep(route, step, share), offM });
  });
  // Stretches that follow one another are one look at the line; between looks it is more than a kilometre beyond.
  for (const run of runsOf(index, stretches)) {
    tellTurns({ index, unsought: route.unsought, from }, run, filter);
    filter.leave();
  }
  return passings;
}

/**
 * Every place where the route comes by the points: each local minimum of the distance from point to line within
 * `corridorM` (ends included) that another such minimum of the same point does not outdo without the line going
 * 1,000 m further away in between. No minimum is sought on steps marked `unsought`.
 * Gives metres along and off the route on WGS 84, ordered by `atM`, then by point; both agree with GeographicLib
 * within a metre for corridors up to 50 km.
 */
export function findPassings(route: RouteLine, points: readonly LonLat[], corridorM: number): RoutePassing[] {
  const index = indexRoute(route);
  const passings: RoutePassing[] = [];
  for (const [point, { lon, lat }] of points.entries()) {
    passings.push(...passingsBy(route, index, { lon, lat, point }, corridorM));
  }
  return passings.sort(byPlaceThenPoint);
}

/**
 * For each point that has one within `radiusM` (up to 50 km), the single nearest place on the route, steps marked
 * `unsought` aside; the earlier of ties. Ordered by `atM`, then by point.
 */
export function nearestPlaces(route: RouteLine, points: readonly LonLat[], radiusM: number): RoutePassing[] {
  const places: RoutePassing[] = [];
  for (const [point, place] of points.entries()) {
    const nearest = nearestPlace(route, place, { radiusM, soughtOnly: true });
    if (nearest !== null) places.push({ point, ...nearest });
  }
  return places.sort(byPlaceThenPoint);
}
