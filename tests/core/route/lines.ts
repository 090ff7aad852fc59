import type { RouteDocument, RoutePart } from '../../../server/core/input/sources.ts';
import { buildRoute, type RouteChoice } from '../../../server/core/route/build/build-route.ts';
import type { RouteLine } from '../../../server/core/route/route-line.ts';

export type Corner = readonly [number, number];

/** A part with these segments of [lon, lat]. */
export function partOf(
  segments: readonly (readonly Corner[])[],
  name: string | null = null,
  kind: RoutePart['kind'] = 'track',
): RoutePart {
  return {
    kind,
    name,
    segments: segments.map((points) => ({
      lon: Float64Array.from(points, ([lon]) => lon),
      lat: Float64Array.from(points, ([, lat]) => lat),
      ele: new Float64Array(points.length).fill(Number.NaN),
    })),
  };
}

export function documentOf(parts: RoutePart[], name: string | null = null): RouteDocument {
  return { name, parts, waypoints: [], cautions: [] };
}

const ALL: RouteChoice = { part: 'all', sparseStepM: 5_000 };

/** The route of a document, which must be one. */
export function routeOfDocument(document: RouteDocument, choice: Partial<RouteChoice> = {}): RouteLine {
  const built = buildRoute(document, { ...ALL, ...choice });
  if (!built.ok) throw new Error(built.refusal.code);
  return built.value;
}

/** The route through these points without a break. */
export const routeThrough = (points: readonly Corner[]): RouteLine =>
  routeOfDocument(documentOf([partOf([points])]));

/** The route through these segments, with bridges between them. */
export const routeOfSegments = (...segments: (readonly Corner[])[]): RouteLine =>
  routeOfDocument(documentOf([partOf(segments)]));

/** Turns metres east and north of a base into degrees, by the lengths of a degree at 27° S (G4, G5 between rows). */
export function onPlain(eastM: number, northM: number): Corner {
  const latRad = (-27 * Math.PI) / 180;
  const w2 = 1 - 0.00669437999014 * Math.sin(latRad) ** 2;
  const m = (6_378_137 * (1 - 0.00669437999014)) / w2 ** 1.5;
  const lat = -27 + (northM / m) * (180 / Math.PI);
  const w = Math.sqrt(1 - 0.00669437999014 * Math.sin((lat * Math.PI) / 180) ** 2);
  const n = (6_378_137 / w) * Math.cos((lat * Math.PI) / 180);
  return [88 + (eastM / n) * (180 / Math.PI), lat];
}

/** A place as findPassings takes it. */
export function placeOnPlain(eastM: number, northM: number): { lon: number; lat: number } {
  const [lon, lat] = onPlain(eastM, northM);
  return { lon, lat };
}

/** The line through corners given in metres on the plain, with a vertex every `everyM` or less. */
export function lineOnPlain(corners: readonly Corner[], everyM = 100): Corner[] {
  const points: Corner[] = [];
  corners.forEach(([x, y], i) => {
    if (i > 0) {
      const [x0, y0] = corners[i - 1]!;
      const steps = Math.max(1, Math.ceil(Math.hypot(x - x0, y - y0) / everyM));
      for (let k = 1; k < steps; k += 1) {
        points.push(onPlain(x0 + ((x - x0) * k) / steps, y0 + ((y - y0) * k) / steps));
      }
    }
    points.push(onPlain(x, y));
  });
  return points;
}
