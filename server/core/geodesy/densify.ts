import { unwrapLongitude } from './longitude.ts';
import { LONGEST_STEP_M, stepM } from './step.ts';
import { RADIANS_PER_DEGREE } from './wgs84.ts';

/** Parts are equal on a sphere; on WGS 84 they differ by up to 1 % between equator and pole, so aim that much lower. */
const UNEVENNESS = 1.012;

/**
 * A place on the line between two places, `share` of the way (0 to 1): on the great circle through their geodetic
 * positions, which keeps within a metre of the WGS 84 geodesic over 100 km (17 m over 500 km).
 * The longitude comes out on the turn of `lon1`. Ends that are exactly opposite have no single line: the
 * result is then one of them.
 */
export function between(
  lon1: number,
  lat1: number,
  lon2: number,
  lat2: number,
  share: number,
): { lon: number; lat: number } {
  if (share <= 0) return { lon: lon1, lat: lat1 };
  if (share >= 1) return { lon: unwrapLongitude(lon2, lon1), lat: lat2 };
  const phi1 = lat1 * RADIANS_PER_DEGREE;
  const phi2 = lat2 * RADIANS_PER_DEGREE;
  const lambda = (lon2 - lon1) * RADIANS_PER_DEGREE;
  // Unit vectors with the first place on the meridian 0: a = (cos, 0, sin), b below.
  const bx = Math.cos(phi2) * Math.cos(lambda);
  const by = Math.cos(phi2) * Math.sin(lambda);
  const bz = Math.sin(phi2);
  const ax = Math.cos(phi1);
  const az = Math.sin(phi1);
  const angle = 2 * Math.asin(Math.min(1, Math.hypot(bx - ax, by, bz - az) / 2));
  if (angle < 1e-9) {
    return { lon: lon1 + share * (unwrapLongitude(lon2, lon1) - lon1), lat: lat1 + share * (lat2 - lat1) };
  }
  const wa = Math.sin((1 - share) * angle);
  const wb = Math.sin(share * angle);
  const x = wa * ax + wb * bx;
  const y = wb * by;
  const z = wa * az + wb * bz;
  return {
    lon: lon1 + Math.atan2(y, x) / RADIANS_PER_DEGREE,
    lat: Math.atan2(z, Math.hypot(x, y)) / RADIANS_PER_DEGREE,
  };
}

/** How many equal parts a step needs so that none is longer than 2 km; 1 when it is short enough as it is. */
export function partsOfStep(lengthM: number): number {
  return lengthM <= LONGEST_STEP_M ? 1 : Math.ceil((lengthM * UNEVENNESS) / LONGEST_STEP_M);
}

/**
 * A step of any length as measured: its length on WGS 84 in metres, and the places between its ends (ends left
 * out) so that no part is longer than 2 km. Longitudes run on from `lon1` without a jump.
 */
export function densifyStep(
  lon1: number,
  lat1: number,
  lon2: number,
  lat2: number,
): { lengthM: number; inner: { lon: number; lat: number; atM: number }[] } {
  const wholeM = stepM(lon1, lat1, lon2, lat2);
  const parts = partsOfStep(wholeM);
  if (parts === 1) return { lengthM: wholeM, inner: [] };
  const inner: { lon: number; lat: number; atM: number }[] = [];
  let atM = 0;
  let lastLon = lon1;
  let lastLat = lat1;
  for (let part = 1; part < parts; part += 1) {
    const place = between(lon1, lat1, lon2, lat2, part / parts);
    const lon = unwrapLongitude(place.lon, lastLon);
    atM += stepM(lastLon, lastLat, lon, place.lat);
    inner.push({ lon, lat: place.lat, atM });
    lastLon = lon;
    lastLat = place.lat;
  }
  return { lengthM: atM + stepM(lastLon, lastLat, lon2, lat2), inner };
}
