import { numberAt } from '../lists/at.ts';
import type { RouteLine } from '../route/route-line.ts';

/** A line for drawing: degrees (longitudes unwrapped) and metres along the route at each vertex. */
export interface DrawnLine {
  lon: Float64Array;
  lat: Float64Array;
  atM: Float64Array;
}

/** Vertices of a drawn route at most (ours): two commodities' pieces then stay near 2,000. */
export const MAX_VERTICES = 900;
/** Bends smaller than this share of the route's extent are left out: 1/20 pixel when it fills 1,000 pixels. */
export const FINEST_SHARE = 1 / 20_000;
/** Web Mercator's limit (EPSG:3857), beyond which no map of ours draws. */
const MERCATOR_LIMIT_DEG = 85.05;

/**
 * Douglas and Peucker (1973) on the map's own plane: the most telling vertices up to `maxVertices`, ends always kept.
 * Each vertex gets the tolerance at which it would fall out, so one pass serves every tolerance.
 */
export function simplifyLine(route: Pick<RouteLine, 'lon' | 'lat' | 'atM'>, maxVertices: number): DrawnLine {
  const count = route.lon.length;
  const { x, y } = onMap(route.lon, route.lat);
  const weight = weightsOf(x, y);
  const extent = Math.max(spread(x), spread(y));
  const sorted = Float64Array.from(weight).sort();
  const cut = count > maxVertices ? numberAt(sorted, count - maxVertices) : 0;
  const tolerance = Math.max(cut, extent * FINEST_SHARE);
  const kept: number[] = [];
  for (let i = 0; i < count; i += 1) {
    if (i === 0 || i === count - 1 || numberAt(weight, i) > tolerance) kept.push(i);
  }
  return {
    lon: Float64Array.from(kept, (i) => numberAt(route.lon, i)),
    lat: Float64Array.from(kept, (i) => numberAt(route.lat, i)),
    atM: Float64Array.from(kept, (i) => numberAt(route.atM, i)),
  };
}

/** Places on the map's plane, radians. */
interface OnMap {
  x: Float64Array;
  y: Float64Array;
}

/** Degrees on the map's plane (Web Mercator), in radians. */
export function onMap(lon: Float64Array, lat: Float64Array): OnMap {
  const x = new Float64Array(lon.length);
  const y = new Float64Array(lon.length);
  for (let i = 0; i < lon.length; i += 1) {
    x[i] = (numberAt(lon, i) * Math.PI) / 180;
    y[i] = mercatorY(numberAt(lat, i));
  }
  return { x, y };
}

function mercatorY(lat: number): number {
  const bounded = Math.min(MERCATOR_LIMIT_DEG, Math.max(-MERCATOR_LIMIT_DEG, lat));
  return Math.log(Math.tan(Math.PI / 4 + (bounded * Math.PI) / 360));
}

/** For each vertex the greatest tolerance at which it is still kept; ends are infinite. */
export function weightsOf(x: Float64Array, y: Float64Array): Float64Array {
  const weight = new Float64Array(x.length);
  const last = x.length - 1;
  weight[0] = Number.POSITIVE_INFINITY;
  weight[last] = Number.POSITIVE_INFINITY;
  const stack: [number, number, number][] = [[0, last, Number.POSITIVE_INFINITY]];
  for (let span = stack.pop(); span !== undefined; span = stack.pop()) {
    const [from, to, above] = span;
    let farthest = -1;
    let distance = 0;
    for (let i = from + 1; i < to; i += 1) {
      const off = offSegment({ x, y }, i, from, to);
      if (off > distance) {
        distance = off;
        farthest = i;
      }
    }
    if (farthest < 0) continue;
    const held = Math.min(distance, above);
    weight[farthest] = held;
    stack.push([from, farthest, held], [farthest, to, held]);
  }
  return weight;
}

/** How far a vertex is from the straight line between two others. */
function offSegment({ x, y }: OnMap, vertex: number, from: number, to: number): number {
  const [px, py] = [numberAt(x, vertex), numberAt(y, vertex)];
  const [ax, ay] = [numberAt(x, from), numberAt(y, from)];
  const dx = numberAt(x, to) - ax;
  const dy = numberAt(y, to) - ay;
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / square));
  return Math.hypot(px - ax - along * dx, py - ay - along * dy);
}

function spread(values: Float64Array): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return high - low;
}
