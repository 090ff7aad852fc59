import Flatbush from 'flatbush';
import { toCartesian } from '../geodesy/cartesian.ts';
import type { RouteLine } from './route-line.ts';

/** A stretch of neighbouring steps is searched as one: at most so many steps, and so many metres unless one step is longer. */
const STEPS_IN_STRETCH = 64;
const STRETCH_M = 2_000;

/**
 * The route made ready for questions "how far is this place from the line". Distances are taken through the earth
 * (chords between earth-centred coordinates): a step of at most 2 km bends away from its chord by 8 cm, which moves
 * distances over the ground by less than a millimetre, and poles and the 180th meridian need no care.
 */
export interface RouteIndex {
  /** Earth-centred coordinates of vertex i at 3 i, 3 i + 1, 3 i + 2, metres. */
  xyz: Float64Array;
  /** Squared chord of step i, m². */
  chord2: Float64Array;
  /** First step of stretch k; one entry more than there are stretches. */
  stretchStart: Uint32Array;
  /** Ball around stretch k: centre and radius at 4 k to 4 k + 3, metres. */
  balls: Float64Array;
  /** Boxes of the stretches, degrees, longitudes unwrapped as in the route. */
  boxes: Flatbush;
}

function cartesianVertices(route: RouteLine): Float64Array {
  const xyz = new Float64Array(route.lon.length * 3);
  for (let i = 0; i < route.lon.length; i += 1) {
    const { x, y, z } = toCartesian(route.lon[i]!, route.lat[i]!);
    xyz[3 * i] = x;
    xyz[3 * i + 1] = y;
    xyz[3 * i + 2] = z;
  }
  return xyz;
}

function chordsOf(xyz: Float64Array): Float64Array {
  const chord2 = new Float64Array(xyz.length / 3 - 1);
  for (let i = 0; i < chord2.length; i += 1) {
    const o = 3 * i;
    const dx = xyz[o + 3]! - xyz[o]!;
    const dy = xyz[o + 4]! - xyz[o + 1]!;
    const dz = xyz[o + 5]! - xyz[o + 2]!;
    chord2[i] = dx * dx + dy * dy + dz * dz;
  }
  return chord2;
}

function stretchesOf(route: RouteLine): Uint32Array {
  const steps = route.lon.length - 1;
  const starts = [0];
  let start = 0;
  for (let step = 1; step < steps; step += 1) {
    if (step - start >= STEPS_IN_STRETCH || route.atM[step + 1]! - route.atM[start]! > STRETCH_M) {
      starts.push(step);
      start = step;
    }
  }
  starts.push(steps);
  return Uint32Array.from(starts);
}

function make(route: RouteLine): RouteIndex {
  const xyz = cartesianVertices(route);
  const stretchStart = stretchesOf(route);
  const stretches = stretchStart.length - 1;
  const balls = new Float64Array(stretches * 4);
  const boxes = new Flatbush(stretches);
  for (let k = 0; k < stretches; k += 1) {
    const first = stretchStart[k]!;
    const last = stretchStart[k + 1]!;
    let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
    let [x, y, z] = [0, 0, 0];
    for (let i = first; i <= last; i += 1) {
      west = Math.min(west, route.lon[i]!);
      east = Math.max(east, route.lon[i]!);
      south = Math.min(south, route.lat[i]!);
      north = Math.max(north, route.lat[i]!);
      x += xyz[3 * i]!;
      y += xyz[3 * i + 1]!;
      z += xyz[3 * i + 2]!;
    }
    boxes.add(west, south, east, north);
    const vertices = last - first + 1;
    x /= vertices;
    y /= vertices;
    z /= vertices;
    let radius = 0;
    for (let i = first; i <= last; i += 1) {
      radius = Math.max(radius, Math.hypot(xyz[3 * i]! - x, xyz[3 * i + 1]! - y, xyz[3 * i + 2]! - z));
    }
    balls.set([x, y, z, radius], k * 4);
  }
  boxes.finish();
  return { xyz, chord2: chordsOf(xyz), stretchStart, balls, boxes };
}

const made = new WeakMap<RouteLine, RouteIndex>();

/** The route's index, made at the first call for a route and kept as long as the route is. */
export function indexRoute(route: RouteLine): RouteIndex {
  const known = made.get(route);
  if (known !== undefined) return known;
  const index = make(route);
  made.set(route, index);
  return index;
}
