import Flatbush from 'flatbush';
import { type Cartesian, toCartesian } from '../geodesy/cartesian.ts';
import { numberAt } from '../lists/at.ts';
import type { RouteLine } from './route-line.ts';

/** A stretch of neighbouring steps is searched as one: at most so many steps, and so many metres unless one step is longer. */
const STEPS_IN_STRETCH = 64;
const STRETCH_M = 2_000;

/** Steps of the route, `firstStep` to `endStep` - 1. */
export interface StepRun {
  readonly firstStep: number;
  readonly endStep: number;
}

/**
 * The route made ready for questions "how far is this place from the line". Distances are taken through the earth
 * (chords between earth-centred coordinates): a step of at most 2 km bends away from its chord by 8 cm, which moves
 * distances over the ground by less than a millimetre, and poles and the 180th meridian need no care.
 */
export interface RouteIndex {
  /** Earth-centred coordinates of vertex i at 3 i, 3 i + 1, 3 i + 2, metres. */
  readonly xyz: Float64Array;
  /** Squared chord of step i, m². */
  readonly chord2: Float64Array;
  /** First step of stretch k; one entry more than there are stretches. */
  readonly stretchStart: Float64Array;
  /** Ball around stretch k: earth-centred centre and radius at 4 k to 4 k + 3, metres. */
  readonly balls: Float64Array;
  /** Boxes of the stretches, degrees, longitudes unwrapped as in the route. */
  readonly boxes: Flatbush;
}

/** Squared chord between a place and vertex i, m². */
export function chordToVertex2(xyz: Float64Array, vertex: number, { x, y, z }: Cartesian): number {
  const dx = numberAt(xyz, 3 * vertex) - x;
  const dy = numberAt(xyz, 3 * vertex + 1) - y;
  const dz = numberAt(xyz, 3 * vertex + 2) - z;
  return dx * dx + dy * dy + dz * dz;
}

/** How far a place is from the ball around stretch k, through the earth, metres; less than nothing inside it. */
export function toBallM(balls: Float64Array, stretch: number, { x, y, z }: Cartesian): number {
  const dx = numberAt(balls, 4 * stretch) - x;
  const dy = numberAt(balls, 4 * stretch + 1) - y;
  const dz = numberAt(balls, 4 * stretch + 2) - z;
  return Math.hypot(dx, dy, dz) - numberAt(balls, 4 * stretch + 3);
}

/** The steps of stretch k, or of stretches k to `last`. */
export const stretchRun = (stretchStart: Float64Array, stretch: number, last = stretch): StepRun => ({
  firstStep: numberAt(stretchStart, stretch),
  endStep: numberAt(stretchStart, last + 1),
});

/** The steps of stretches (ascending), those of stretches that follow one another as one run. */
export function runsOf({ stretchStart }: RouteIndex, stretches: readonly number[]): StepRun[] {
  const runs: StepRun[] = [];
  let first: number | undefined;
  for (const [place, stretch] of stretches.entries()) {
    first ??= stretch;
    if (stretches[place + 1] === stretch + 1) continue;
    runs.push(stretchRun(stretchStart, first, stretch));
    first = undefined;
  }
  return runs;
}

function vertexAt(xyz: Float64Array, vertex: number): Cartesian {
  return {
    x: numberAt(xyz, 3 * vertex),
    y: numberAt(xyz, 3 * vertex + 1),
    z: numberAt(xyz, 3 * vertex + 2),
  };
}

function cartesianVertices(route: RouteLine): Float64Array {
  const xyz = new Float64Array(route.lon.length * 3);
  for (const [vertex, lon] of route.lon.entries()) {
    const { x, y, z } = toCartesian(lon, numberAt(route.lat, vertex));
    xyz[3 * vertex] = x;
    xyz[3 * vertex + 1] = y;
    xyz[3 * vertex + 2] = z;
  }
  return xyz;
}

function chordsOf(xyz: Float64Array): Float64Array {
  const chord2 = new Float64Array(xyz.length / 3 - 1);
  for (let step = 0; step < chord2.length; step += 1) {
    chord2[step] = chordToVertex2(xyz, step, vertexAt(xyz, step + 1));
  }
  return chord2;
}

function stretchStarts({ atM }: RouteLine): Float64Array {
  const steps = atM.length - 1;
  const starts = [0];
  let start = 0;
  for (let step = 1; step < steps; step += 1) {
    const tooLong = numberAt(atM, step + 1) - numberAt(atM, start) > STRETCH_M;
    if (step - start >= STEPS_IN_STRETCH || tooLong) {
      starts.push(step);
      start = step;
    }
  }
  starts.push(steps);
  return Float64Array.from(starts);
}

/** The ball around the vertices of a run: their mean, and the furthest of them. */
function ballOf(xyz: Float64Array, { firstStep, endStep }: StepRun): [number, number, number, number] {
  let [x, y, z] = [0, 0, 0];
  for (let vertex = firstStep; vertex <= endStep; vertex += 1) {
    x += numberAt(xyz, 3 * vertex);
    y += numberAt(xyz, 3 * vertex + 1);
    z += numberAt(xyz, 3 * vertex + 2);
  }
  const vertices = endStep - firstStep + 1;
  x /= vertices;
  y /= vertices;
  z /= vertices;
  let radiusM = 0;
  for (let vertex = firstStep; vertex <= endStep; vertex += 1) {
    const corner = vertexAt(xyz, vertex);
    radiusM = Math.max(radiusM, Math.hypot(corner.x - x, corner.y - y, corner.z - z));
  }
  return [x, y, z, radiusM];
}

function addBox(boxes: Flatbush, { lon, lat }: RouteLine, { firstStep, endStep }: StepRun): void {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let vertex = firstStep; vertex <= endStep; vertex += 1) {
    west = Math.min(west, numberAt(lon, vertex));
    east = Math.max(east, numberAt(lon, vertex));
    south = Math.min(south, numberAt(lat, vertex));
    north = Math.max(north, numberAt(lat, vertex));
  }
  boxes.add(west, south, east, north);
}

function newIndex(route: RouteLine): RouteIndex {
  const xyz = cartesianVertices(route);
  const stretchStart = stretchStarts(route);
  const stretches = stretchStart.length - 1;
  const balls = new Float64Array(stretches * 4);
  const boxes = new Flatbush(stretches);
  for (let stretch = 0; stretch < stretches; stretch += 1) {
    const run = stretchRun(stretchStart, stretch);
    addBox(boxes, route, run);
    balls.set(ballOf(xyz, run), stretch * 4);
  }
  boxes.finish();
  return { xyz, chord2: chordsOf(xyz), stretchStart, balls, boxes };
}

const indexes = new WeakMap<RouteLine, RouteIndex>();

/** The route's index, built at the first call for a route and kept as long as the route is. */
export function indexRoute(route: RouteLine): RouteIndex {
  const known = indexes.get(route);
  if (known !== undefined) return known;
  const index = newIndex(route);
  indexes.set(route, index);
  return index;
}
