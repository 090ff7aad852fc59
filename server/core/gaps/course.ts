import type { Commodity, Evidence } from '../../contract/common.ts';
import type { PlaceName } from '../phrases/supply-kinds.ts';
import type { SpanM } from '../quantity/span.ts';
import type { Term } from '../quantity/term.ts';
import type { Rig } from '../rig/rig.ts';
import type { Profile } from './profile.ts';

/** A halt of whole or part days at a place of the route: a rest day, waiting. */
export interface Stay {
  atM: number;
  days: number;
}

/** An end of a gap, metres along the route; `detourM` one way. */
export interface Edge {
  kind: 'start' | 'passing' | 'end';
  id: string | null;
  name: PlaceName | null;
  atM: number;
  detourM: number;
  evidence: Evidence | null;
  /** Waiting before anything is filled, charged on the way that ends here; none when left out. */
  waitDays?: number;
  /** Filling and treating, charged on the way that begins here; none when left out. */
  fillDays?: number;
}

/** Everything about the route that a gap of one commodity is reckoned with, at the rates the verdict uses. */
export interface Course {
  commodity: Commodity;
  rig: Rig;
  lengthM: number;
  /** Metres of way along the route: allowance included, straight lines where a road is meant × 1.3. */
  wayM: Profile;
  /** Days that pass on the way: driving, and nights and stays as jumps. */
  days: Profile;
  /** Litres that go along the route, driven forwards (`out`, stays included) and backwards (`home`). */
  litres: { out: Profile; home: Profile };
  /** What a metre off the route costs: a detour, the way past the end. */
  off: { wayM: number; days: number; litres: number };
  /** What the litres along a stretch were summed from; they add up to `litres.out`. */
  explain: (fromM: number, toM: number) => Term[];
  /** Bridges over 1 km and sparse steps, in route order, not overlapping. */
  sketchy: readonly SpanM[];
  /** Stretches that cannot be driven back. */
  oneWay: readonly SpanM[];
  /** Stretches for which no extract would show a supply, in route order. */
  uncovered: readonly SpanM[];
  /** Water: places where washing water is taken from a source marked for it, metres along; none when left out. */
  washingStopsM?: readonly number[];
  /** From the end of the route to the next supply; null when the user did not say. */
  onward: { m: number; hours: number } | null;
}

/** Metres between two places of the route that no road line was given for. */
export function sketchyM(course: Pick<Course, 'sketchy'>, fromM: number, toM: number): number {
  return course.sketchy.reduce(
    (sum, span) => sum + Math.max(0, Math.min(span.toM, toM) - Math.max(span.fromM, fromM)),
    0,
  );
}
