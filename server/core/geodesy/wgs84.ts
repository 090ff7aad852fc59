/**
 * WGS 84 as defined in NGA.STND.0036 (2014): semi-major axis and flattening; the rest follows from the two.
 */
export const SEMI_MAJOR_M = 6_378_137;
export const FLATTENING = 1 / 298.257223563;
/** First eccentricity squared, f (2 - f) = 0.00669437999014. */
export const ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING);
export const SEMI_MINOR_M = SEMI_MAJOR_M * (1 - FLATTENING);

/** Radius of the sphere that Turf measures on (`earthRadius` of @turf/helpers 7.4), metres: the IUGG mean radius R1. */
export const TURF_RADIUS_M = 6_371_008.8;

export const RADIANS_PER_DEGREE = Math.PI / 180;

/** Radius of curvature in the meridian (M), metres, at a geodetic latitude in radians: a (1 - e²) / (1 - e² sin²)^1.5. */
export function meridianRadiusM(latRad: number): number {
  const w2 = 1 - ECCENTRICITY_SQUARED * Math.sin(latRad) ** 2;
  return (SEMI_MAJOR_M * (1 - ECCENTRICITY_SQUARED)) / (w2 * Math.sqrt(w2));
}

/** Radius of curvature in the prime vertical (N), metres, at a geodetic latitude in radians: a / sqrt(1 - e² sin²). */
export function primeVerticalRadiusM(latRad: number): number {
  return SEMI_MAJOR_M / Math.sqrt(1 - ECCENTRICITY_SQUARED * Math.sin(latRad) ** 2);
}
