import { geodesicBetween } from './geodesic.ts';
import { unwrapLongitude } from './longitude.ts';
import { LONGEST_STEP_M, stepM } from './step.ts';

/** Parts are equal on the auxiliary sphere; on WGS 84 they differ by up to 1 %, so aim that much lower. */
const UNEVENNESS = 1.012;

/** How many equal parts a step needs so that none is longer than 2 km; 1 when it is short enough as it is. */
function partsOfStep(lengthM: number): number {
  return lengthM <= LONGEST_STEP_M ? 1 : Math.ceil((lengthM * UNEVENNESS) / LONGEST_STEP_M);
}

/**
 * A step of any length as measured: its length on WGS 84 in metres, and the places on the geodesic between its ends
 * (ends left out) so that no part is longer than 2 km. Longitudes run on from `lon1` without a jump. Agrees with
 * GeographicLib to 1e-9 in length and a centimetre in place, but for ends nearly opposite on the globe.
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
  const placeAt = geodesicBetween(lon1, lat1, lon2, lat2);
  const inner: { lon: number; lat: number; atM: number }[] = [];
  let atM = 0;
  let lastLon = lon1;
  let lastLat = lat1;
  for (let part = 1; part < parts; part += 1) {
    const place = placeAt(part / parts);
    const lon = unwrapLongitude(place.lon, lastLon);
    atM += stepM(lastLon, lastLat, lon, place.lat);
    inner.push({ lon, lat: place.lat, atM });
    lastLon = lon;
    lastLat = place.lat;
  }
  return { lengthM: atM + stepM(lastLon, lastLat, lon2, lat2), inner };
}
