import type { Geometry, Position } from 'geojson';
import { numberIn } from '../../lists/at.ts';
import { pairsOf } from '../../lists/pairs.ts';

/** Degrees. */
type Spot = readonly [lon: number, lat: number];

/** Rings of one polygon, outer first, with longitudes that run on past ±180 rather than jump. */
export type UnwrappedPolygon = Spot[][];

/** A position without two numbers is no place on Earth, as such. */
const spotOf = ([lon = NaN, lat = NaN]: Position): Spot => [lon, lat];

const isPlace = ([lon, lat]: Spot): boolean => Math.abs(lon) <= 180 && Math.abs(lat) <= 90;

const wrapLon = (lon: number): number => (lon >= 180 ? lon - 360 : lon < -180 ? lon + 360 : lon);

/** The positions with each longitude within 180 of the one before, the first within 180 of `nearLon`. */
function unwrapped(line: readonly Position[], nearLon: number): Spot[] {
  let last = nearLon;
  return line.map(spotOf).map(([lon, lat]) => {
    last = lon + 360 * Math.round((last - lon) / 360);
    return [last, lat];
  });
}

/** A polygon's rings unwrapped, holes beside their outer ring. */
export function unwrapPolygon(rings: readonly Position[][]): UnwrappedPolygon {
  const nearLon = rings[0]?.[0]?.[0] ?? 0;
  return rings.map((ring) => unwrapped(ring, nearLon));
}

/** The sides of all rings; the last of each goes back to its first position. */
const sidesOf = (polygon: UnwrappedPolygon): [Spot, Spot][] =>
  polygon.flatMap((ring) => pairsOf([...ring, ...ring.slice(0, 1)]));

/** Longitudes at which the parallel `lat` crosses the sides, from west to east: inside between each two. */
function crossings(sides: readonly [Spot, Spot][], lat: number): number[] {
  const lons: number[] = [];
  for (const [[lonA, latA], [lonB, latB]] of sides) {
    if (latA <= lat !== latB <= lat) lons.push(lonA + ((lat - latA) / (latB - latA)) * (lonB - lonA));
  }
  return lons.sort((a, b) => a - b);
}

/** True when the position (longitude unwrapped alike) lies inside the polygon or on its edge. */
export function isInside(polygon: UnwrappedPolygon, lon: number, lat: number): boolean {
  const sides = sidesOf(polygon);
  for (const [[lonA, latA], [lonB, latB]] of sides) {
    const cross = (lonB - lonA) * (lat - latA) - (latB - latA) * (lon - lonA);
    const along = (lon - lonA) * (lon - lonB) + (lat - latA) * (lat - latB);
    if (cross === 0 && along <= 0) return true;
  }
  return crossings(sides, lat).filter((crossing) => crossing > lon).length % 2 === 1;
}

/** Twice the planar area in square degrees with longitude shortened by latitude: for comparing sizes only. */
function sizeOf([ring = []]: UnwrappedPolygon): number {
  const [lon0, lat0] = ring[0] ?? [0, 0];
  let twice = 0;
  for (const [[lonA, latA], [lonB, latB]] of sidesOf([ring])) {
    twice += (lonA - lon0) * (latB - lat0) - (lonB - lon0) * (latA - lat0);
  }
  return Math.abs(twice) * Math.cos((lat0 * Math.PI) / 180);
}

/** Shares of the height at which a point on the surface is sought. */
const SCAN_SHARES = [0.5, 0.25, 0.75, 0.125, 0.375, 0.625, 0.875];

/** The middle of the widest stretch inside the polygon on a parallel through it; null when it has no surface. */
function onSurface(polygon: UnwrappedPolygon): Spot | null {
  const lats = (polygon[0] ?? []).map(([, lat]) => lat);
  const south = lats.reduce((a, b) => Math.min(a, b), 90);
  const north = lats.reduce((a, b) => Math.max(a, b), -90);
  const sides = sidesOf(polygon);
  for (const share of SCAN_SHARES) {
    const lat = south + share * (north - south);
    const lons = crossings(sides, lat);
    let best: Spot | null = null;
    let width = 0;
    for (let i = 0; i + 1 < lons.length; i += 2) {
      const west = numberIn(lons, i);
      const east = numberIn(lons, i + 1);
      if (east - west <= width) continue;
      width = east - west;
      best = [(west + east) / 2, lat];
    }
    if (best !== null) return best;
  }
  return null;
}

/** Half way along a line, measured in degrees with longitude shortened by latitude (the place matters, not the measure). */
function halfWay(line: readonly Position[]): { place: Spot; length: number } | null {
  const points = unwrapped(line, line[0]?.[0] ?? 0);
  const [first] = points;
  if (first === undefined) return null;
  const steps = pairsOf(points).map(([[lonA, latA], [lonB, latB]]) => {
    const shrink = Math.cos((latA * Math.PI) / 180);
    return { lonA, latA, lonB, latB, length: Math.hypot((lonB - lonA) * shrink, latB - latA) };
  });
  const length = steps.reduce((sum, step) => sum + step.length, 0);
  let left = length / 2;
  for (const { lonA, latA, lonB, latB, length: step } of steps) {
    if (step > 0 && left <= step) {
      const share = left / step;
      return { place: [lonA + share * (lonB - lonA), latA + share * (latB - latA)], length };
    }
    left -= step;
  }
  return { place: first, length };
}

/** All the positions of a geometry. */
function positionsOf(geometry: Geometry): Position[] {
  switch (geometry.type) {
    case 'Point':
      return [geometry.coordinates];
    case 'MultiPoint':
    case 'LineString':
      return geometry.coordinates;
    case 'MultiLineString':
    case 'Polygon':
      return geometry.coordinates.flat();
    case 'MultiPolygon':
      return geometry.coordinates.flat(2);
    case 'GeometryCollection':
      return geometry.geometries.flatMap(positionsOf);
  }
}

const rank = (geometry: Geometry): number =>
  geometry.type.endsWith('Polygon') ? 2 : geometry.type.endsWith('LineString') ? 1 : 0;

function placeOn(geometry: Geometry): Spot | null {
  switch (geometry.type) {
    case 'Point':
      return spotOf(geometry.coordinates);
    case 'MultiPoint': {
      const [first] = geometry.coordinates;
      return first === undefined ? null : spotOf(first);
    }
    case 'LineString':
      return halfWay(geometry.coordinates)?.place ?? null;
    case 'MultiLineString': {
      const halves = geometry.coordinates.map(halfWay).filter((half) => half !== null);
      const longest = halves.reduce<(typeof halves)[number] | null>(
        (best, half) => (best === null || half.length > best.length ? half : best),
        null,
      );
      return longest?.place ?? null;
    }
    case 'Polygon':
      return (
        onSurface(unwrapPolygon(geometry.coordinates)) ??
        halfWay(geometry.coordinates[0] ?? [])?.place ??
        null
      );
    case 'MultiPolygon': {
      const polygons = geometry.coordinates
        .map(unwrapPolygon)
        .filter((polygon) => (polygon[0]?.length ?? 0) > 0)
        .sort((a, b) => sizeOf(b) - sizeOf(a));
      for (const polygon of polygons) {
        const place = onSurface(polygon);
        if (place !== null) return place;
      }
      return halfWay((polygons[0]?.[0] ?? []).map(([lon, lat]) => [lon, lat]))?.place ?? null;
    }
    case 'GeometryCollection': {
      const parts = [...geometry.geometries].sort((a, b) => rank(b) - rank(a));
      for (const part of parts) {
        const place = placeOn(part);
        if (place !== null) return place;
      }
      return null;
    }
  }
}

/**
 * A place on a geometry, [lon, lat] in degrees, lon from -180 to below 180: on the surface of an area (its largest),
 * half way along a line (its longest), the first of several points. Null when it has no positions, or one that is
 * no place on Earth.
 */
export function placeOf(geometry: Geometry): [number, number] | null {
  const spots = positionsOf(geometry).map(spotOf);
  if (spots.length === 0 || !spots.every(isPlace)) return null;
  const place = placeOn(geometry);
  if (place === null) return null;
  const [lon, lat] = place;
  return [wrapLon(lon), lat];
}
