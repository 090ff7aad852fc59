import type { LonLat } from './lon-lat.ts';
import { unwrapLongitude } from './longitude.ts';
import { FLATTENING, RADIANS_PER_DEGREE } from './wgs84.ts';

/** Radians; a nanometre on the ground. */
const SETTLED = 1e-15;
const MOST_ROUNDS = 100;
/** Below this angle (radians, 6 mm) a straight line in degrees is as good, and better conditioned. */
const TINY = 1e-9;

/** What turns longitude on the auxiliary sphere into longitude on the ellipsoid: Vincenty's equations 10 and 11. */
interface Correction {
  sinAzimuth: number;
  c: number;
  /** Angle from the equator crossing to the first place, radians. */
  sigma1: number;
}

function lagAt({ sinAzimuth, c, sigma1 }: Correction, sigma: number): number {
  const cos2m = Math.cos(2 * sigma1 + sigma);
  const inner = cos2m + c * Math.cos(sigma) * (2 * cos2m * cos2m - 1);
  return (1 - c) * FLATTENING * sinAzimuth * (sigma + c * Math.sin(sigma) * inner);
}

const reduced = (latRad: number) => Math.atan2((1 - FLATTENING) * Math.sin(latRad), Math.cos(latRad));

/** Two places on the auxiliary sphere: sines and cosines of their reduced latitudes, radians of longitude between. */
interface Ends {
  sin1: number;
  cos1: number;
  sin2: number;
  cos2: number;
  turnRad: number;
}

/** The way between two places on the auxiliary sphere, radians: longitude between them there, and the angle. */
interface SphereWay {
  lambda: number;
  sigma: number;
  correction: Correction;
}

const NO_CORRECTION: Correction = { sinAzimuth: 0, c: 0, sigma1: 0 };

/** Vincenty's inverse by iteration; where it does not settle the great circle. Null where the ends are one place. */
function sphereWay({ sin1, cos1, sin2, cos2, turnRad }: Ends): SphereWay | null {
  let lambda = turnRad;
  for (let round = 0; ; round += 1) {
    const across = cos2 * Math.sin(lambda);
    const along = cos1 * sin2 - sin1 * cos2 * Math.cos(lambda);
    const sinSigma = Math.hypot(across, along);
    const sigma = Math.atan2(sinSigma, sin1 * sin2 + cos1 * cos2 * Math.cos(lambda));
    if (sigma < TINY) return null;
    const sinAzimuth = (cos1 * across) / sinSigma;
    const cos2Azimuth = 1 - sinAzimuth * sinAzimuth;
    const c = (FLATTENING / 16) * cos2Azimuth * (4 + FLATTENING * (4 - 3 * cos2Azimuth));
    const correction = { sinAzimuth, c, sigma1: Math.atan2(sin1 * sinSigma, cos1 * along) };
    const next = turnRad + lagAt(correction, sigma);
    if (Math.abs(next - lambda) < SETTLED) return { lambda, sigma, correction };
    if (round === MOST_ROUNDS || Math.abs(next) > Math.PI) {
      return { lambda: turnRad, sigma, correction: NO_CORRECTION };
    }
    lambda = next;
  }
}

/**
 * The WGS 84 geodesic between two places as a function of the share of the way (0 to 1, equal parts of the auxiliary
 * sphere, which are equal on the ground within 0.6 %). Longitudes run on from `lon1`.
 * T. Vincenty, Survey Review XXIII(176), 1975, the inverse by iteration, then the longitude along the way by the same
 * series: within a millimetre of GeographicLib. Where that does not settle (ends nearly opposite on the globe), the
 * great circle through the reduced latitudes stands in.
 */
export function geodesicBetween(
  lon1: number,
  lat1: number,
  lon2: number,
  lat2: number,
): (share: number) => LonLat {
  const turn = unwrapLongitude(lon2, lon1) - lon1;
  const beta1 = reduced(lat1 * RADIANS_PER_DEGREE);
  const beta2 = reduced(lat2 * RADIANS_PER_DEGREE);
  const [sin1, cos1, sin2, cos2] = [Math.sin(beta1), Math.cos(beta1), Math.sin(beta2), Math.cos(beta2)];
  const way = sphereWay({ sin1, cos1, sin2, cos2, turnRad: turn * RADIANS_PER_DEGREE });
  if (way === null) return (share) => ({ lon: lon1 + share * turn, lat: lat1 + share * (lat2 - lat1) });
  const { lambda, sigma, correction } = way;

  return (share) => {
    if (share <= 0) return { lon: lon1, lat: lat1 };
    if (share >= 1) return { lon: lon1 + turn, lat: lat2 };
    const wa = Math.sin((1 - share) * sigma);
    const wb = Math.sin(share * sigma);
    const x = wa * cos1 + wb * cos2 * Math.cos(lambda);
    const y = wb * cos2 * Math.sin(lambda);
    const z = wa * sin1 + wb * sin2;
    const lonRad = Math.atan2(y, x) - lagAt(correction, share * sigma);
    return {
      lon: lon1 + lonRad / RADIANS_PER_DEGREE,
      lat: Math.atan2(z, (1 - FLATTENING) * Math.hypot(x, y)) / RADIANS_PER_DEGREE,
    };
  };
}
