import { SEMI_MAJOR_M } from '../geodesy/wgs84.ts';
import { numberAt } from '../lists/at.ts';
import { onMap, weightsOf } from '../mapview/simplify-line.ts';
import type { RouteLine } from '../route/route-line.ts';

/** A route for finding one's place on it: degrees, and metres along at each vertex. */
export interface RouteSketch {
  readonly lon: readonly number[];
  readonly lat: readonly number[];
  readonly atM: readonly number[];
  /** So far the route may be from the sketch, metres. */
  readonly toleranceM: number;
}

/** Finer than a telephone knows its place beside a road (ours). */
const TOLERANCE_M = 20;
/** Steps no longer than this: a straight line in degrees is the road's to a metre then (ours). */
const LONGEST_STEP_M = 5_000;
/** A ten-thousandth of a degree more is a metre at the most. */
const DEGREE_DECIMALS = 5;

/**
 * The route without the bends that do not show in a position. Tolerances are of the map's plane, which draws nothing
 * smaller than it is (Web Mercator stretches by 1 / cos of the latitude).
 */
export function routeSketch(route: Pick<RouteLine, 'lon' | 'lat' | 'atM'>): RouteSketch {
  const { x, y } = onMap(route.lon, route.lat);
  const weight = weightsOf(x, y);
  const last = route.atM.length - 1;
  const kept: number[] = [];
  let keptM = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= last; i += 1) {
    const nextM = numberAt(route.atM, Math.min(i + 1, last));
    if (numberAt(weight, i) * SEMI_MAJOR_M <= TOLERANCE_M && nextM - keptM <= LONGEST_STEP_M) continue;
    kept.push(i);
    keptM = numberAt(route.atM, i);
  }
  const degrees = (list: Float64Array) => kept.map((i) => Number(numberAt(list, i).toFixed(DEGREE_DECIMALS)));
  return {
    lon: degrees(route.lon),
    lat: degrees(route.lat),
    atM: kept.map((i) => Math.round(numberAt(route.atM, i))),
    toleranceM: TOLERANCE_M,
  };
}
