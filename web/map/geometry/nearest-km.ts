import type { MapData } from '../../../server/contract/answers/map.ts';
import type { Span } from '../../../server/contract/common.ts';

type Line = MapData['line'];
type Place = [number, number];

/** A point of the drawn line: its place along the route, and its position in degrees. */
interface Vertex {
  atKm: number;
  lon: number;
  lat: number;
}

/** The line's points; one whose place or position is not told is none. */
const verticesOf = ({ coordinates, atKm }: Line): Vertex[] =>
  coordinates.flatMap(([lon, lat], index) => {
    const km = atKm[index];
    return lon === undefined || lat === undefined || km === undefined ? [] : [{ atKm: km, lon, lat }];
  });

/** What lies a share of the way from one figure to another. */
const between = (a: number, b: number, share: number): number => a + share * (b - a);

/** The place of the drawn route nearest to a position, km; the earliest of ties. Null for an empty line. */
export function nearestKm(line: Line, lon: number, lat: number): number | null {
  // A plane with longitudes shrunk by the latitude's cosine: near enough to tell one stretch from another.
  const shrink = Math.cos((lat * Math.PI) / 180);
  let bestSquare = Number.POSITIVE_INFINITY;
  let bestKm: number | null = null;
  const vertices = verticesOf(line);
  let [a] = vertices;
  for (const b of vertices) {
    // The first has none before it, and is a step to itself.
    if (a === undefined) break;
    const ax = (a.lon - lon) * shrink;
    const ay = a.lat - lat;
    const dx = (b.lon - a.lon) * shrink;
    const dy = b.lat - a.lat;
    const square = dx * dx + dy * dy;
    const share = square === 0 ? 0 : Math.min(1, Math.max(0, -(ax * dx + ay * dy) / square));
    const away = (ax + share * dx) ** 2 + (ay + share * dy) ** 2;
    if (away < bestSquare) {
      bestSquare = away;
      bestKm = between(a.atKm, b.atKm, share);
    }
    a = b;
  }
  return bestKm;
}

/** The position at a place of the route; its nearest end outside the route. Null for an empty line. */
export const positionAt = (line: Line, km: number): Place | null => positionAmong(verticesOf(line), km);

function positionAmong(vertices: readonly Vertex[], km: number): Place | null {
  const last = vertices.at(-1);
  if (last === undefined) return null;
  const index = vertices.findIndex(({ atKm }) => atKm >= km);
  const next = vertices[index] ?? last;
  const before = vertices[index - 1] ?? next;
  const step = next.atKm - before.atKm;
  const share = step > 0 ? (km - before.atKm) / step : 0;
  return [between(before.lon, next.lon, share), between(before.lat, next.lat, share)];
}

/** [[west, south], [east, north]] of the route between two places; longitudes run on past 180 as the line's do. */
export function boundsBetween(line: Line, fromKm: number, toKm: number): [Place, Place] | null {
  const vertices = verticesOf(line);
  const ends = [positionAmong(vertices, fromKm), positionAmong(vertices, toKm)].filter((end) => end !== null);
  const inside = vertices
    .filter(({ atKm }) => atKm >= fromKm && atKm <= toKm)
    .map(({ lon, lat }): Place => [lon, lat]);
  const all = [...ends, ...inside];
  if (all.length === 0) return null;
  const low: Place = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high: Place = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const position of all) {
    for (const axis of [0, 1] as const) {
      low[axis] = Math.min(low[axis], position[axis]);
      high[axis] = Math.max(high[axis], position[axis]);
    }
  }
  return [low, high];
}

/** A box in degrees; its longitudes run on as the line's do. */
interface Box {
  west: number;
  south: number;
  east: number;
  north: number;
}

/** The longest stretch of the route whose points lie in a box; null where fewer than two that follow on each other do. */
export function stretchWithin(line: Line, { west, south, east, north }: Box): Span | null {
  const runs: Span[] = [];
  let wasIn = false;
  for (const { atKm, lon, lat } of verticesOf(line)) {
    const isIn =
      [-360, 0, 360].some((turn) => lon + turn >= west && lon + turn <= east) && lat >= south && lat <= north;
    const run = wasIn ? runs.at(-1) : undefined;
    if (isIn && run !== undefined) run.toKm = atKm;
    else if (isIn) runs.push({ fromKm: atKm, toKm: atKm });
    wasIn = isIn;
  }
  const [longest] = runs.sort((a, b) => b.toKm - b.fromKm - (a.toKm - a.fromKm));
  return longest === undefined || longest.toKm === longest.fromKm ? null : longest;
}
