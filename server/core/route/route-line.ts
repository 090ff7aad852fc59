import type { Bbox } from '../../contract/common.ts';
import { numberAt } from '../lists/at.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { SpanM } from '../quantity/span.ts';
import type { Ferry } from './ferry.ts';

/**
 * A stretch of the line that is no road line for sure: a jump between segments, a long straight step that turns sharply
 * at an end (`via`), or one that does not and may be a simplified road (`sparse`).
 */
export interface SketchySpan extends SpanM {
  kind: 'bridge' | 'via' | 'sparse';
}

/**
 * The route as measured: one line from start to end.
 * `lon`, `lat` (degrees) and `atM` (metres along, WGS 84) have one entry a vertex of the densified line, in which
 * no step is longer than 2 km. Longitudes are unwrapped: they run on past ±180 where the route crosses the
 * 180th meridian, so neighbouring vertices never differ by more than 180.
 */
export interface RouteLine {
  name: string;
  lon: Float64Array;
  lat: Float64Array;
  atM: Float64Array;
  /** Elevation of each vertex as the file has it, metres; NaN where it has none. Null when it has none at all. */
  eleM: Float64Array | null;
  /** For each step i (vertex i to i + 1): 1 where the step lies on a bridge over 1 km, on which no passing is sought. */
  unsought: Uint8Array;
  lengthM: number;
  /** Points as read, before densifying. */
  vertices: number;
  /** Tracks (or routes) used. */
  parts: number;
  /** Longest step between two points as read, bridges aside, metres. */
  longestStepM: number;
  bbox: Bbox;
  /** Bridges over 1 km and sparse steps, in route order; each counts × 1.3 in needs. */
  sketchy: SketchySpan[];
  /** Stretches on which a ferry carries the vehicle, in route order; absent: none. */
  ferries?: readonly Ferry[];
  cautions: Caution[];
}

/** Metres along of a place on a step, which is so far along it (0 to 1). */
export function metresOnStep({ atM }: RouteLine, step: number, share: number): number {
  const fromM = numberAt(atM, step);
  return fromM + share * (numberAt(atM, step + 1) - fromM);
}
