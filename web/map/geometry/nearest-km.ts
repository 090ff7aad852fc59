import type { MapData } from '../../../server/contract/map.ts';

type Line = MapData['line'];

/** The place of the drawn route nearest to a position, km; the earliest of ties. Null for an empty line. */
export function nearestKm(line: Line, lon: number, lat: number): number | null {
  // A plane with longitudes shrunk by the latitude's cosine: near enough to tell one stretch from another.
  const shrink = Math.cos((lat * Math.PI) / 180);
  let bestSquare = Number.POSITIVE_INFINITY;
  let bestKm: number | null = null;
  const { coordinates, atKm } = line;
  for (let i = 0; i < coordinates.length; i++) {
    const a = coordinates[Math.max(0, i - 1)]!;
    const b = coordinates[i]!;
    const ax = (a[0]! - lon) * shrink;
    const ay = a[1]! - lat;
    const dx = (b[0]! - a[0]!) * shrink;
    const dy = b[1]! - a[1]!;
    const square = dx * dx + dy * dy;
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, -(ax * dx + ay * dy) / square));
    const away = (ax + t * dx) ** 2 + (ay + t * dy) ** 2;
    if (away < bestSquare) {
      bestSquare = away;
      const fromKm = atKm[Math.max(0, i - 1)]!;
      bestKm = fromKm + t * (atKm[i]! - fromKm);
    }
  }
  return bestKm;
}

/** The position at a place of the route; its nearest end outside the route. Null for an empty line. */
export function positionAt(line: Line, km: number): [number, number] | null {
  const { coordinates, atKm } = line;
  const last = coordinates.length - 1;
  if (last < 0) return null;
  const next = atKm.findIndex((vertexKm) => vertexKm >= km);
  if (next === 0) return [coordinates[0]![0]!, coordinates[0]![1]!];
  if (next === -1) return [coordinates[last]![0]!, coordinates[last]![1]!];
  const a = coordinates[next - 1]!;
  const b = coordinates[next]!;
  const step = atKm[next]! - atKm[next - 1]!;
  const t = step > 0 ? (km - atKm[next - 1]!) / step : 0;
  return [a[0]! + t * (b[0]! - a[0]!), a[1]! + t * (b[1]! - a[1]!)];
}

/** [[west, south], [east, north]] of the route between two places; longitudes run on past 180 as the line's do. */
export function boundsBetween(
  line: Line,
  fromKm: number,
  toKm: number,
): [[number, number], [number, number]] | null {
  const ends = [positionAt(line, fromKm), positionAt(line, toKm)].filter((end) => end !== null);
  const inside = line.coordinates.filter((_, i) => line.atKm[i]! >= fromKm && line.atKm[i]! <= toKm);
  const all = [...ends, ...inside];
  if (all.length === 0) return null;
  const low: [number, number] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high: [number, number] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const position of all) {
    for (const axis of [0, 1] as const) {
      low[axis] = Math.min(low[axis], position[axis]!);
      high[axis] = Math.max(high[axis], position[axis]!);
    }
  }
  return [low, high];
}
