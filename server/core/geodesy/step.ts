import { distance } from '@turf/turf';
import { unwrapLongitude } from './longitude.ts';
import { meridianRadiusM, primeVerticalRadiusM, RADIANS_PER_DEGREE, TURF_RADIUS_M } from './wgs84.ts';

/** No step of a measured line is longer: up to here the scaled distance agrees with GeographicLib to 1e-9. */
export const LONGEST_STEP_M = 2_000;

/**
 * Length of a short step on WGS 84, metres: Turf's distance on its sphere, scaled by the radii of curvature at the
 * step's middle latitude, k = sqrt(M² cos² a + N² sin² a) / R, a being the bearing there.
 * Longitudes may be on any turn. Good to 1e-9 up to 5 km within 80 degrees of the equator; for longer steps
 * densify first (`densifyStep`).
 */
export function stepM(lon1: number, lat1: number, lon2: number, lat2: number): number {
  const sphereM = distance([lon1, lat1], [lon2, lat2], { units: 'meters' });
  if (sphereM === 0) return 0;
  const middleRad = ((lat1 + lat2) / 2) * RADIANS_PER_DEGREE;
  const north = lat2 - lat1;
  const east = (unwrapLongitude(lon2, lon1) - lon1) * Math.cos(middleRad);
  const squared = north * north + east * east;
  if (squared === 0) return 0;
  const m = meridianRadiusM(middleRad);
  const n = primeVerticalRadiusM(middleRad);
  return (sphereM * Math.sqrt((m * m * north * north + n * n * east * east) / squared)) / TURF_RADIUS_M;
}
