import Flatbush from 'flatbush';
import { at, numberAt } from '../../lists/at.ts';
import type { SpanM } from '../../quantity/span.ts';
import { indexRoute, type RouteIndex, runsOf, type StepRun } from '../route-index.ts';
import { metresOnStep, type RouteLine } from '../route-line.ts';

/** A closed outer ring of [lon, lat]; whether the last position repeats the first does not matter. */
export type Ring = readonly (readonly [number, number])[];

/** Spans that come so close are one: neighbouring areas share a border, whose crossings differ by rounding. */
const JOIN_M = 0.001;
/** A place this close to an edge lies on it, and so inside (degrees; a millionth of a metre). */
const ON_EDGE_DEGREES = 1e-11;

/** A straight line in degrees: an edge of a ring, or a step of the route. */
interface Line {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

interface RingEdges {
  readonly edges: readonly Line[];
  readonly boxes: Flatbush;
}

const boxOf = ({ x1, y1, x2, y2 }: Line): [number, number, number, number] => [
  Math.min(x1, x2),
  Math.min(y1, y2),
  Math.max(x1, x2),
  Math.max(y1, y2),
];

const stepLine = ({ lon, lat }: RouteLine, step: number): Line => ({
  x1: numberAt(lon, step),
  y1: numberAt(lat, step),
  x2: numberAt(lon, step + 1),
  y2: numberAt(lat, step + 1),
});

/** The edges of a ring on a turn of the globe. */
function edgesOf(ring: Ring, turn: number): RingEdges {
  const edges = ring.map(([lon1, lat1], corner): Line => {
    const [lon2, lat2] = at(ring, (corner + 1) % ring.length);
    return { x1: lon1 + turn * 360, y1: lat1, x2: lon2 + turn * 360, y2: lat2 };
  });
  const boxes = new Flatbush(edges.length);
  for (const edge of edges) boxes.add(...boxOf(edge));
  boxes.finish();
  return { edges, boxes };
}

/** Even-odd rule; a place on an edge is inside. */
function isInside(edges: readonly Line[], x: number, y: number): boolean {
  let inside = false;
  for (const { x1, y1, x2, y2 } of edges) {
    const length2 = (x2 - x1) ** 2 + (y2 - y1) ** 2;
    const share =
      length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / length2));
    if (Math.hypot(x1 + share * (x2 - x1) - x, y1 + share * (y2 - y1) - y) <= ON_EDGE_DEGREES) return true;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
  }
  return inside;
}

/** Shares of the step (0 to 1) at which it meets the edge: where it crosses, or both ends of a common stretch. */
function meetings(step: Line, edge: Line): number[] {
  const dx = step.x2 - step.x1;
  const dy = step.y2 - step.y1;
  const ex = edge.x2 - edge.x1;
  const ey = edge.y2 - edge.y1;
  const cross = dx * ey - dy * ex;
  const length2 = dx * dx + dy * dy;
  if (length2 === 0) return [];
  const shareOf = (x: number, y: number) => ((x - step.x1) * dx + (y - step.y1) * dy) / length2;
  if (Math.abs(cross) <= 1e-14 * Math.sqrt(length2 * (ex * ex + ey * ey))) {
    return [shareOf(edge.x1, edge.y1), shareOf(edge.x2, edge.y2)].filter((share) => share >= 0 && share <= 1);
  }
  const share = ((edge.x1 - step.x1) * ey - (edge.y1 - step.y1) * ex) / cross;
  // An edge just missed at its end makes a needless break, which the test of the middle sees through.
  return share >= -1e-9 && share <= 1 + 1e-9 ? [Math.min(1, Math.max(0, share))] : [];
}

/** Metres along of a place told as step and share of it: 12.5 is half way along step 12. */
function metresAt(route: RouteLine, place: number): number {
  const step = Math.min(Math.floor(place), route.atM.length - 2);
  return metresOnStep(route, step, place - step);
}

/** Stretches of a run of steps that lie inside the ring. */
function spansOfRun(route: RouteLine, { edges, boxes }: RingEdges, { firstStep, endStep }: StepRun): SpanM[] {
  const breaks = [endStep];
  for (let step = firstStep; step < endStep; step += 1) {
    const line = stepLine(route, step);
    for (const edge of boxes.search(...boxOf(line))) {
      for (const share of meetings(line, at(edges, edge))) breaks.push(step + share);
    }
  }
  breaks.sort((a, b) => a - b);
  const spans: SpanM[] = [];
  let from = firstStep;
  for (const to of breaks) {
    if (to <= from) continue;
    const middle = (from + to) / 2;
    const step = Math.min(Math.floor(middle), endStep - 1);
    const share = middle - step;
    const { x1, y1, x2, y2 } = stepLine(route, step);
    if (isInside(edges, x1 + share * (x2 - x1), y1 + share * (y2 - y1))) {
      spans.push({ fromM: metresAt(route, from), toM: metresAt(route, to) });
    }
    from = to;
  }
  return spans;
}

function spansOfRing(route: RouteLine, index: RouteIndex, ring: Ring): SpanM[] {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [lon, lat] of ring) {
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  const spans: SpanM[] = [];
  const { boxes } = index;
  const lastTurn = Math.floor((boxes.maxX - west) / 360);
  for (let turn = Math.ceil((boxes.minX - east) / 360); turn <= lastTurn; turn += 1) {
    const stretches = boxes.search(west + 360 * turn, south, east + 360 * turn, north);
    if (stretches.length === 0) continue;
    const edges = edgesOf(ring, turn);
    const inOrder = stretches.sort((a, b) => a - b);
    spans.push(...runsOf(index, inOrder).flatMap((run) => spansOfRun(route, edges, run)));
  }
  return spans;
}

/** Spans put in order, those that overlap or touch made one, empty ones left out. */
export function mergeSpans(spans: readonly SpanM[]): SpanM[] {
  const merged: SpanM[] = [];
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
export function coverSpans(route: RouteLine, rings: readonly Ring[]): SpanM[] {
  const index = indexRoute(route);
  return mergeSpans(
    rings.filter((ring) => ring.length >= 3).flatMap((ring) => spansOfRing(route, index, ring)),
  );
}
