import Flatbush from 'flatbush';
import { indexRoute, type RouteIndex } from './route-index.ts';
import type { RouteLine } from './route-line.ts';

/** A closed outer ring of [lon, lat]; whether the last position repeats the first does not matter. */
export type Ring = readonly (readonly [number, number])[];

export interface RouteSpan {
  fromM: number;
  toM: number;
}

/** Spans that come so close are one: neighbouring areas share a border, whose crossings differ by rounding. */
const JOIN_M = 0.001;
/** A place this close to an edge lies on it, and so inside (degrees; a millionth of a metre). */
const ON_EDGE_DEGREES = 1e-11;

interface RingEdges {
  /** Ends of edge j at 4 j: lon, lat, lon, lat. */
  ends: Float64Array;
  boxes: Flatbush;
}

function edgesOf(ring: Ring, turn: number): RingEdges {
  const ends = new Float64Array(ring.length * 4);
  const boxes = new Flatbush(ring.length);
  for (const [j, [lon1, lat1]] of ring.entries()) {
    const [lon2, lat2] = ring[(j + 1) % ring.length]!;
    const [x1, x2] = [lon1 + turn * 360, lon2 + turn * 360];
    ends.set([x1, lat1, x2, lat2], j * 4);
    boxes.add(Math.min(x1, x2), Math.min(lat1, lat2), Math.max(x1, x2), Math.max(lat1, lat2));
  }
  boxes.finish();
  return { ends, boxes };
}

/** Even-odd rule; a place on an edge is inside. */
function isInside({ ends }: RingEdges, x: number, y: number): boolean {
  let inside = false;
  for (let o = 0; o < ends.length; o += 4) {
    const [x1, y1, x2, y2] = [ends[o]!, ends[o + 1]!, ends[o + 2]!, ends[o + 3]!];
    const length2 = (x2 - x1) ** 2 + (y2 - y1) ** 2;
    const share =
      length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / length2));
    if (Math.hypot(x1 + share * (x2 - x1) - x, y1 + share * (y2 - y1) - y) <= ON_EDGE_DEGREES) return true;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
  }
  return inside;
}

/** Shares of the step (0 to 1) at which it meets the edge: where it crosses, or both ends of a common stretch. */
function meetings(route: RouteLine, step: number, ends: Float64Array, edge: number): number[] {
  const ax = route.lon[step]!;
  const ay = route.lat[step]!;
  const dx = route.lon[step + 1]! - ax;
  const dy = route.lat[step + 1]! - ay;
  const [x1, y1, x2, y2] = [ends[4 * edge]!, ends[4 * edge + 1]!, ends[4 * edge + 2]!, ends[4 * edge + 3]!];
  const ex = x2 - x1;
  const ey = y2 - y1;
  const cross = dx * ey - dy * ex;
  const length2 = dx * dx + dy * dy;
  if (length2 === 0) return [];
  const shareOf = (x: number, y: number) => ((x - ax) * dx + (y - ay) * dy) / length2;
  if (Math.abs(cross) <= 1e-14 * Math.sqrt(length2 * (ex * ex + ey * ey))) {
    return [shareOf(x1, y1), shareOf(x2, y2)].filter((share) => share >= 0 && share <= 1);
  }
  const share = ((x1 - ax) * ey - (y1 - ay) * ex) / cross;
  // An edge just missed at its end makes a needless break, which the test of the middle sees through.
  return share >= -1e-9 && share <= 1 + 1e-9 ? [Math.min(1, Math.max(0, share))] : [];
}

const metresAt = (route: RouteLine, at: number): number => {
  const step = Math.min(Math.floor(at), route.atM.length - 2);
  const fromM = route.atM[step]!;
  return fromM + (at - step) * (route.atM[step + 1]! - fromM);
};

/** Stretches of the steps `first` to `end` - 1 that lie inside the ring. */
function spansOfRun(route: RouteLine, ring: RingEdges, first: number, end: number): RouteSpan[] {
  const breaks = [first, end];
  for (let step = first; step < end; step += 1) {
    const [x1, x2] = [route.lon[step]!, route.lon[step + 1]!];
    const [y1, y2] = [route.lat[step]!, route.lat[step + 1]!];
    const near = ring.boxes.search(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
    for (const edge of near) {
      for (const share of meetings(route, step, ring.ends, edge)) breaks.push(step + share);
    }
  }
  breaks.sort((a, b) => a - b);
  const spans: RouteSpan[] = [];
  for (let i = 0; i + 1 < breaks.length; i += 1) {
    const [from, to] = [breaks[i]!, breaks[i + 1]!];
    if (to <= from) continue;
    const middle = (from + to) / 2;
    const step = Math.min(Math.floor(middle), end - 1);
    const share = middle - step;
    const x = route.lon[step]! + share * (route.lon[step + 1]! - route.lon[step]!);
    const y = route.lat[step]! + share * (route.lat[step + 1]! - route.lat[step]!);
    if (isInside(ring, x, y)) spans.push({ fromM: metresAt(route, from), toM: metresAt(route, to) });
  }
  return spans;
}

function spansOfRing(route: RouteLine, index: RouteIndex, ring: Ring): RouteSpan[] {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [lon, lat] of ring) {
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  const spans: RouteSpan[] = [];
  const { boxes, stretchStart } = index;
  const lastTurn = Math.floor((boxes.maxX - west) / 360);
  for (let turn = Math.ceil((boxes.minX - east) / 360); turn <= lastTurn; turn += 1) {
    const stretches = boxes.search(west + 360 * turn, south, east + 360 * turn, north).sort((a, b) => a - b);
    if (stretches.length === 0) continue;
    const edges = edgesOf(ring, turn);
    for (let i = 0; i < stretches.length; ) {
      let last = i;
      while (last + 1 < stretches.length && stretches[last + 1] === stretches[last]! + 1) last += 1;
      spans.push(
        ...spansOfRun(route, edges, stretchStart[stretches[i]!]!, stretchStart[stretches[last]! + 1]!),
      );
      i = last + 1;
    }
  }
  return spans;
}

/** Spans put in order, those that overlap or touch made one, empty ones left out. */
export function mergeSpans(spans: readonly RouteSpan[]): RouteSpan[] {
  const merged: RouteSpan[] = [];
  for (const span of [...spans].sort((a, b) => a.fromM - b.fromM)) {
    const last = merged.at(-1);
    if (last !== undefined && span.fromM <= last.toM + JOIN_M) last.toM = Math.max(last.toM, span.toM);
    else if (span.toM > span.fromM) merged.push({ ...span });
  }
  return merged;
}

/**
 * The stretches of the route inside the union of the rings, in route order, metres along. Edges and steps are
 * straight in degrees: within 0.1 m of the geodesic for steps of 2 km at 45 degrees. Rings may be on any turn of the
 * globe, none may cross the 180th meridian unless its longitudes run on past it. A stretch along an edge is inside.
 * Rings of fewer than three positions hold nothing.
 */
export function coverSpans(route: RouteLine, rings: readonly Ring[]): RouteSpan[] {
  const index = indexRoute(route);
  return mergeSpans(
    rings.filter((ring) => ring.length >= 3).flatMap((ring) => spansOfRing(route, index, ring)),
  );
}
