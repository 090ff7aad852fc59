import {
  ECCENTRICITY_SQUARED,
  meridianRadiusM,
  primeVerticalRadiusM,
  RADIANS_PER_DEGREE,
  SEMI_MAJOR_M,
} from './wgs84.ts';

/** Earth-centred coordinates, metres: x to 0° N 0° E, y to 0° N 90° E, z to the north pole. */
export interface Cartesian {
  x: number;
  y: number;
  z: number;
}

/** Earth-centred coordinates of a place on the WGS 84 ellipsoid (height 0). */
export function toCartesian(lon: number, lat: number): Cartesian {
  const latRad = lat * RADIANS_PER_DEGREE;
  const lonRad = lon * RADIANS_PER_DEGREE;
  const n = primeVerticalRadiusM(latRad);
  const r = n * Math.cos(latRad);
  return {
    x: r * Math.cos(lonRad),
    y: r * Math.sin(lonRad),
    z: n * (1 - ECCENTRICITY_SQUARED) * Math.sin(latRad),
  };
}

/** Gauss's mean radius sqrt(M N) at a latitude in degrees, metres. */
export function meanRadiusM(lat: number): number {
  const latRad = lat * RADIANS_PER_DEGREE;
  return Math.sqrt(meridianRadiusM(latRad) * primeVerticalRadiusM(latRad));
}

/**
 * Distance over the ground that belongs to a straight chord, metres, with the mean radius of the region: within a
 * millimetre of GeographicLib at 50 km, and never falling as the chord grows.
 */
export function arcOfChordM(chordM: number, radiusM: number): number {
  return 2 * radiusM * Math.asin(Math.min(1, chordM / (2 * radiusM)));
}

/** The chord of a distance over the ground, metres: the reverse of `arcOfChordM` up to half a turn. */
export function chordOfArcM(arcM: number, radiusM: number): number {
  return arcM >= Math.PI * radiusM ? 2 * SEMI_MAJOR_M : 2 * radiusM * Math.sin(arcM / (2 * radiusM));
}
