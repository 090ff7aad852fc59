import type { LonLat } from '../geodesy/lon-lat.ts';
import { meridianRadiusM, primeVerticalRadiusM, RADIANS_PER_DEGREE } from '../geodesy/wgs84.ts';
import type { PlainBox } from './line-index.ts';

/** Metres of a degree to the east and to the north at a latitude. */
export function metresPerDegree(lat: number): { east: number; north: number } {
  const latRad = lat * RADIANS_PER_DEGREE;
  return {
    east: primeVerticalRadiusM(latRad) * Math.cos(latRad) * RADIANS_PER_DEGREE,
    north: meridianRadiusM(latRad) * RADIANS_PER_DEGREE,
  };
}

/** The box that holds all places within so many metres of one. */
export function boxAround({ lon, lat }: LonLat, withinM: number): PlainBox {
  const { east, north } = metresPerDegree(lat);
  const [lonDeg, latDeg] = [withinM / Math.max(1, east), withinM / north];
  return [lon - lonDeg, lat - latDeg, lon + lonDeg, lat + latDeg];
}

/** Where two straight pieces cross, as they are drawn on a map in degrees; null where they do not. */
export function crossingOf(a: LonLat, b: LonLat, c: LonLat, d: LonLat): LonLat | null {
  const [abLon, abLat] = [b.lon - a.lon, b.lat - a.lat];
  const [cdLon, cdLat] = [d.lon - c.lon, d.lat - c.lat];
  const turn = abLon * cdLat - abLat * cdLon;
  if (turn === 0) return null;
  const alongAb = ((c.lon - a.lon) * cdLat - (c.lat - a.lat) * cdLon) / turn;
  const alongCd = ((c.lon - a.lon) * abLat - (c.lat - a.lat) * abLon) / turn;
  if (alongAb < 0 || alongAb > 1 || alongCd < 0 || alongCd > 1) return null;
  return { lon: a.lon + alongAb * abLon, lat: a.lat + alongAb * abLat };
}

/** Metres from a place to a straight piece near it, on a plane; longitudes are on one turn of the globe. */
export const toPieceM = (place: LonLat, from: LonLat, to: LonLat): number => nearestOn(place, from, to).offM;

/** The nearest place of a straight piece near another, and how far it is, on a plane. */
export function nearestOn(place: LonLat, from: LonLat, to: LonLat): LonLat & { offM: number } {
  const { east, north } = metresPerDegree(place.lat);
  const [x, y] = [(place.lon - from.lon) * east, (place.lat - from.lat) * north];
  const [dx, dy] = [(to.lon - from.lon) * east, (to.lat - from.lat) * north];
  const length2 = dx * dx + dy * dy;
  const share = length2 === 0 ? 0 : Math.min(1, Math.max(0, (x * dx + y * dy) / length2));
  return {
    lon: from.lon + share * (to.lon - from.lon),
    lat: from.lat + share * (to.lat - from.lat),
    offM: Math.hypot(x - share * dx, y - share * dy),
  };
}
