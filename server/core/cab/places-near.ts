import { meanRadiusM } from '../geodesy/cartesian.ts';
import { RADIANS_PER_DEGREE } from '../geodesy/wgs84.ts';
import { numberIn } from '../lists/at.ts';
import type { RouteSketch } from './route-sketch.ts';

/** A position as a telephone has it: degrees, and metres that it may be wrong by. */
export interface Fix {
  readonly lon: number;
  readonly lat: number;
  readonly accuracyM: number;
}

/** A place of the route near a position, metres along and off it. */
export interface PlaceNear {
  readonly atM: number;
  readonly offM: number;
}

/** Where a position is on the route: `far`: too far off to be on it; `rough`: not well enough known. */
export type PlacesNear =
  | { readonly kind: 'found'; readonly places: readonly [PlaceNear, ...PlaceNear[]] }
  | { readonly kind: 'far'; readonly offM: number }
  | { readonly kind: 'rough'; readonly accuracyM: number };

/** Farther off than this nobody is on the route (ours): a camp or a pump beside the road is. */
const FAR_M = 1_000;
/** A position worse than this tells no kilometre (ours). */
const ROUGHEST_M = 1_000;
/** Places less than this apart along the road are one (ours). */
const APART_M = 1_000;
/** Two lines of one road, as drawn on the way there and on the way back, lie this far apart at most (ours). */
const SAME_ROAD_M = 50;

/**
 * The places of a route where a position may be: several where the road is driven twice or crossed. The one nearest along
 * to `lastM` first, where one was before; else in the order of the road.
 */
export function placesNear(sketch: RouteSketch, fix: Fix, lastM: number | null): PlacesNear {
  if (fix.accuracyM > ROUGHEST_M) return { kind: 'rough', accuracyM: fix.accuracyM };
  const steps = stepsNear(sketch, fix);
  const nearestM = steps.reduce((least, { offM }) => Math.min(least, offM), Number.POSITIVE_INFINITY);
  if (nearestM > FAR_M) return { kind: 'far', offM: nearestM };
  const withinM = nearestM + fix.accuracyM + sketch.toleranceM + SAME_ROAD_M;
  const [first, ...more] = grouped(steps.filter(({ offM }) => offM <= withinM));
  if (first === undefined) return { kind: 'far', offM: nearestM };
  const places: [PlaceNear, ...PlaceNear[]] = [first, ...more];
  if (lastM !== null) places.sort((a, b) => Math.abs(a.atM - lastM) - Math.abs(b.atM - lastM));
  return { kind: 'found', places };
}

/** Of every step the place that is nearest. A plane in degrees, which is right to a thousandth within some 50 km. */
function stepsNear({ lon, lat, atM }: RouteSketch, fix: Fix): PlaceNear[] {
  const metresPerDegree = meanRadiusM(fix.lat) * RADIANS_PER_DEGREE;
  const shrink = Math.cos(fix.lat * RADIANS_PER_DEGREE);
  const x = (index: number) => turned(numberIn(lon, index) - fix.lon) * shrink * metresPerDegree;
  const y = (index: number) => (numberIn(lat, index) - fix.lat) * metresPerDegree;
  return atM.slice(1).map((toM, index) => {
    const fromM = numberIn(atM, index);
    const [ax, ay] = [x(index), y(index)];
    const [dx, dy] = [x(index + 1) - ax, y(index + 1) - ay];
    const square = dx * dx + dy * dy;
    const along = square === 0 ? 0 : Math.min(1, Math.max(0, -(ax * dx + ay * dy) / square));
    return { atM: fromM + along * (toM - fromM), offM: Math.hypot(ax + along * dx, ay + along * dy) };
  });
}

/** Degrees of longitude the short way round, -180 to 180. */
const turned = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;

/** Of places that follow each other closely, in route order, the nearest one. */
function grouped(places: readonly PlaceNear[]): PlaceNear[] {
  const groups: PlaceNear[] = [];
  let endM = Number.NEGATIVE_INFINITY;
  for (const place of places) {
    const open = groups.at(-1);
    if (open === undefined || place.atM - endM > APART_M) groups.push(place);
    else if (place.offM < open.offM) groups[groups.length - 1] = place;
    endM = place.atM;
  }
  return groups;
}
