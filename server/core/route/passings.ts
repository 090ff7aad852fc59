import { arcOfChordM, meanRadiusM, toCartesian } from '../geodesy/cartesian.ts';
import { nearestPlace } from './nearest.ts';
import type { PlacedPassing } from './passing.ts';
import { PassingFilter, PROMINENCE_M } from './passing-filter.ts';
import { tellProfile } from './profile.ts';
import { indexRoute, type RouteIndex } from './route-index.ts';
import type { RouteLine } from './route-line.ts';
import { stretchesNear } from './stretches-near.ts';

export interface Place {
  lon: number;
  lat: number;
}

const byPlaceThenPoint = (a: PlacedPassing, b: PlacedPassing) => a.atM - b.atM || a.point - b.point;

function passingsOf(
  route: RouteLine,
  index: RouteIndex,
  place: Place,
  corridorM: number,
  keep: (atM: number, offM: number) => void,
): void {
  const stretches = stretchesNear(index, place.lon, place.lat, corridorM + PROMINENCE_M);
  if (stretches.length === 0) return;
  const { x, y, z } = toCartesian(place.lon, place.lat);
  const radiusM = meanRadiusM(place.lat);
  const toArcM = (chordM: number) => arcOfChordM(chordM, radiusM);
  const { stretchStart } = index;
  const { atM } = route;
  const filter = new PassingFilter(corridorM, (step, share, offM) => {
    keep(atM[step]! + share * (atM[step + 1]! - atM[step]!), offM);
  });
  // Stretches that follow one another are one look at the line; between looks it is more than a kilometre beyond.
  for (let i = 0; i < stretches.length; ) {
    let last = i;
    while (last + 1 < stretches.length && stretches[last + 1] === stretches[last]! + 1) last += 1;
    const firstStep = stretchStart[stretches[i]!]!;
    const endStep = stretchStart[stretches[last]! + 1]!;
    tellProfile(index, route.unsought, firstStep, endStep, x, y, z, toArcM, filter);
    filter.leave();
    i = last + 1;
  }
}

/**
 * Every place where the route comes by the points: each local minimum of the distance from point to line within
 * `corridorM` (ends included) that another such minimum of the same point does not outdo without the line going
 * 1,000 m further away in between. No minimum is sought on steps marked `unsought`.
 * Gives metres along and off the route on WGS 84, ordered by `atM`, then by point; both agree with GeographicLib
 * within a metre for corridors up to 50 km.
 */
export function findPassings(route: RouteLine, points: readonly Place[], corridorM: number): PlacedPassing[] {
  const index = indexRoute(route);
  const passings: PlacedPassing[] = [];
  for (const [point, place] of points.entries()) {
    passingsOf(route, index, place, corridorM, (atM, offM) => {
      passings.push({ point, atM, offM });
    });
  }
  return passings.sort(byPlaceThenPoint);
}

/**
 * For each point that has one within `radiusM` (up to 50 km), the single nearest place on the route, steps marked
 * `unsought` aside; the earlier of ties. Ordered by `atM`, then by point.
 */
export function nearestPlaces(route: RouteLine, points: readonly Place[], radiusM: number): PlacedPassing[] {
  const index = indexRoute(route);
  const places: PlacedPassing[] = [];
  for (const [point, place] of points.entries()) {
    const nearest = nearestPlace(route, index, place.lon, place.lat, radiusM, true);
    if (nearest !== null) places.push({ point, atM: nearest.atM, offM: nearest.offM });
  }
  return places.sort(byPlaceThenPoint);
}
