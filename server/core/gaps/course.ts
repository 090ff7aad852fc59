import type { Commodity, Evidence } from '../../contract/common.ts';
import type { Rig } from '../rig/rig.ts';

export interface SpanM {
  fromM: number;
  toM: number;
}

/** A halt of whole or part days at a place of the route: a rest day, waiting. */
export interface Stay {
  atM: number;
  days: number;
}

/** An end of a gap, metres along the route; `detourM` one way. */
export interface EdgeM {
  kind: 'start' | 'passing' | 'end';
  id: string | null;
  name: string | null;
  atM: number;
  detourM: number;
  evidence: Evidence | null;
}

/** Everything about the route that a gap of one commodity is reckoned with. */
export interface Course {
  commodity: Commodity;
  rig: Rig;
  lengthM: number;
  /** Needs are the measured way times this: 1.05 for an allowance of 5 %. */
  allowanceFactor: number;
  /** Bridges over 1 km and sparse steps, in route order, not overlapping. */
  sketchy: readonly SpanM[];
  /** In route order. */
  stays: readonly Stay[];
  /** Stretches that cannot be driven back. */
  oneWay: readonly SpanM[];
  /** Stretches for which no extract would show a supply, in route order. */
  uncovered: readonly SpanM[];
  /** From the end of the route to the next supply; null when the user did not say. */
  onward: { km: number; hours: number } | null;
}

/** A straight line where a road is meant is this much shorter than the road (ours). */
export const SKETCHY_FACTOR = 1.3;

const overlapM = (span: SpanM, fromM: number, toM: number): number =>
  Math.max(0, Math.min(span.toM, toM) - Math.max(span.fromM, fromM));

/** Metres between two places of the route that no road line was given for. */
export function sketchyM(course: Course, fromM: number, toM: number): number {
  return course.sketchy.reduce((sum, span) => sum + overlapM(span, fromM, toM), 0);
}

/** Metres of driving between two places of the route before the allowance: sketchy stretches count × 1.3. */
export function drivenM(course: Course, fromM: number, toM: number): number {
  return toM - fromM + (SKETCHY_FACTOR - 1) * sketchyM(course, fromM, toM);
}

/** Days of standing from `fromM` on and before `toM`, so that gaps that tile the route share no stay. */
export function stayDays(course: Course, fromM: number, toM: number): number {
  return course.stays
    .filter((stay) => stay.atM >= fromM && stay.atM < toM)
    .reduce((sum, stay) => sum + stay.days, 0);
}

/** Days of standing at exactly this place. */
export const staysAt = (course: Course, atM: number): number =>
  course.stays.filter((stay) => stay.atM === atM).reduce((sum, stay) => sum + stay.days, 0);

/** Places strictly inside a stretch where the way's weight changes or a stay stands, in order, each once. */
export function breaksM(course: Course, fromM: number, toM: number): number[] {
  const places = [
    ...course.sketchy.flatMap((span) => [span.fromM, span.toM]),
    ...course.stays.map((stay) => stay.atM),
  ].filter((atM) => atM > fromM && atM < toM);
  return [...new Set(places)].sort((a, b) => a - b);
}
