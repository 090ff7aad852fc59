import type { Geometry, Position } from 'geojson';

/** Rings of one polygon, outer first, with longitudes that run on past ±180 rather than jump. */
export type UnwrappedPolygon = Position[][];

const isPlace = (position: Position): boolean =>
  Number.isFinite(position[0]) &&
  Number.isFinite(position[1]) &&
  Math.abs(position[0]!) <= 180 &&
  Math.abs(position[1]!) <= 90;

const wrapLon = (lon: number): number => (lon >= 180 ? lon - 360 : lon < -180 ? lon + 360 : lon);

/** The positions with each longitude within 180 of the one before, the first within 180 of `nearLon`. */
function unwrapped(line: readonly Position[], nearLon: number): Position[] {
  let last = nearLon;
  return line.map(([lon, lat]) => {
    last = lon! + 360 * Math.round((last - lon!) / 360);
    return [last, lat!];
  });
}

/** A polygon's rings unwrapped, holes beside their outer ring. */
export function unwrapPolygon(rings: readonly Position[][]): UnwrappedPolygon {
  const nearLon = rings[0]?.[0]?.[0] ?? 0;
  return rings.map((ring) => unwrapped(ring, nearLon));
}

/** Longitudes at which the parallel `lat` crosses the rings, from west to east: inside between each two. */
function crossings(polygon: UnwrappedPolygon, lat: number): number[] {
  const lons: number[] = [];
  for (const ring of polygon) {
    for (let i = 0; i < ring.length; i += 1) {
      const [lonA, latA] = ring[i]! as [number, number];
      const [lonB, latB] = ring[(i + 1) % ring.length]! as [number, number];
      if (latA <= lat !== latB <= lat) lons.push(lonA + ((lat - latA) / (latB - latA)) * (lonB - lonA));
    }
  }
  return lons.sort((a, b) => a - b);
}

/** True when the position (longitude unwrapped alike) lies inside the polygon or on its edge. */
export function isInside(polygon: UnwrappedPolygon, lon: number, lat: number): boolean {
  for (const ring of polygon) {
    for (let i = 0; i < ring.length; i += 1) {
      const [lonA, latA] = ring[i]! as [number, number];
      const [lonB, latB] = ring[(i + 1) % ring.length]! as [number, number];
      const cross = (lonB - lonA) * (lat - latA) - (latB - latA) * (lon - lonA);
      const along = (lon - lonA) * (lon - lonB) + (lat - latA) * (lat - latB);
      if (cross === 0 && along <= 0) return true;
    }
  }
  return crossings(polygon, lat).filter((crossing) => crossing > lon).length % 2 === 1;
}

/** Twice the planar area in square degrees with longitude shortened by latitude: for comparing sizes only. */
function sizeOf(ring: readonly Position[]): number {
  let twice = 0;
  for (let i = 0; i < ring.length; i += 1) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    twice +=
      (a[0]! - ring[0]![0]!) * (b[1]! - ring[0]![1]!) - (b[0]! - ring[0]![0]!) * (a[1]! - ring[0]![1]!);
  }
  return Math.abs(twice) * Math.cos((ring[0]![1]! * Math.PI) / 180);
}

/** Shares of the height at which a point on the surface is sought. */
const SCAN_SHARES = [0.5, 0.25, 0.75, 0.125, 0.375, 0.625, 0.875];

/** The middle of the widest stretch inside the polygon on a parallel through it; null when it has no surface. */
function onSurface(polygon: UnwrappedPolygon): Position | null {
  const lats = (polygon[0] ?? []).map((position) => position[1]!);
  const south = lats.reduce((a, b) => Math.min(a, b), 90);
  const north = lats.reduce((a, b) => Math.max(a, b), -90);
  for (const share of SCAN_SHARES) {
    const lat = south + share * (north - south);
    const lons = crossings(polygon, lat);
    let best: Position | null = null;
    let width = 0;
    for (let i = 0; i + 1 < lons.length; i += 2) {
      if (lons[i + 1]! - lons[i]! <= width) continue;
      width = lons[i + 1]! - lons[i]!;
      best = [(lons[i]! + lons[i + 1]!) / 2, lat];
    }
    if (best !== null) return best;
  }
  return null;
}

/** Half way along a line, measured in degrees with longitude shortened by latitude (the place matters, not the measure). */
function halfWay(line: readonly Position[]): { position: Position; length: number } | null {
  const first = line[0];
  if (first === undefined) return null;
  const points = unwrapped(line, first[0]!);
  const steps = points.slice(1).map((point, i) => {
    const before = points[i]!;
    const shrink = Math.cos((before[1]! * Math.PI) / 180);
    return Math.hypot((point[0]! - before[0]!) * shrink, point[1]! - before[1]!);
  });
  const length = steps.reduce((sum, step) => sum + step, 0);
  let left = length / 2;
  for (const [i, step] of steps.entries()) {
    if (step > 0 && left <= step) {
      const a = points[i]!;
      const b = points[i + 1]!;
      const share = left / step;
      return { position: [a[0]! + share * (b[0]! - a[0]!), a[1]! + share * (b[1]! - a[1]!)], length };
    }
    left -= step;
  }
  return { position: points[0]!, length };
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

function placeOn(geometry: Geometry): Position | null {
  switch (geometry.type) {
    case 'Point':
      return geometry.coordinates;
    case 'MultiPoint':
      return geometry.coordinates[0] ?? null;
    case 'LineString':
      return halfWay(geometry.coordinates)?.position ?? null;
    case 'MultiLineString': {
      const halves = geometry.coordinates.map(halfWay).filter((half) => half !== null);
      const longest = halves.reduce<(typeof halves)[number] | null>(
        (best, half) => (best === null || half.length > best.length ? half : best),
        null,
      );
      return longest?.position ?? null;
    }
    case 'Polygon':
      return (
        onSurface(unwrapPolygon(geometry.coordinates)) ??
        halfWay(geometry.coordinates[0] ?? [])?.position ??
        null
      );
    case 'MultiPolygon': {
      const polygons = geometry.coordinates
        .map(unwrapPolygon)
        .filter((polygon) => (polygon[0]?.length ?? 0) > 0)
        .sort((a, b) => sizeOf(b[0]!) - sizeOf(a[0]!));
      for (const polygon of polygons) {
        const place = onSurface(polygon);
        if (place !== null) return place;
      }
      return halfWay(polygons[0]?.[0] ?? [])?.position ?? null;
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
  const positions = positionsOf(geometry);
  if (positions.length === 0 || !positions.every(isPlace)) return null;
  const place = placeOn(geometry);
  return place === null ? null : [wrapLon(place[0]!), place[1]!];
}
