import type { Commodity, Evidence } from '../../../contract/common.ts';
import type { Surface } from '../../../contract/surface.ts';
import type { PlaceName } from '../../phrases/said/supply-kinds.ts';
import type { SpanM } from '../../quantity/span.ts';
import type { Term } from '../../quantity/term.ts';
import type { Rig } from '../../rig/rig.ts';
import type { SketchySpan } from '../../route/route-line.ts';
import type { DayClock } from './day-clock.ts';
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
  /** No more than this is to be had at one halt, litres; as much as is wanted when left out. */
  mostL?: number;
  /** Waiting before anything is filled, charged on the way that ends here; none when left out. */
  waitDays?: number;
  /** Filling and treating, charged on the way that begins here; none when left out. */
  fillDays?: number;
  /** The same when the way was chosen, as from empty: where the day would have ended with it, the night is spent there. */
  chosenFillDays?: number;
  /** Water: there is as much as is wanted, so that what is used while filling, and until the morning, is the supply's. */
  givesAll?: boolean;
}

/** A stretch of one surface, and what a metre of way takes on it. */
export interface DearerStretch extends SpanM {
  readonly surface: Surface;
  readonly litresPerM: number;
}

/** A stretch on which the heat has the crew drink more than it does elsewhere, litres a day at the high end. */
export interface HotterStretch extends SpanM {
  readonly addedPerDay: number;
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
  /**
   * Litres that go along the route, driven forwards (`out`, nights and stays included) and backwards (`home`, driving
   * alone where there is a clock).
   */
  litres: { out: Profile; home: Profile };
  /** Where in its days the drive is; null where nights are shared out evenly over the driving. */
  clock: DayClock | null;
  /** What a metre off the route costs, a detour or the way past the end: `litres` out, `homeLitres` on the way home. */
  off: { wayM: number; days: number; litres: number; homeLitres: number };
  /** Fuel: stretches that take more than the rig's own high rate, in route order; for the kilometres of a reserve. */
  dearer: readonly DearerStretch[];
  /** What the litres along a stretch were summed from; they add up to `litres.out`. */
  explain: (fromM: number, toM: number) => Term[];
  /** Bridges over 1 km and sparse steps, in route order, not overlapping. */
  sketchy: readonly SketchySpan[];
  /** Stretches that cannot be driven back. */
  oneWay: readonly SpanM[];
  /** Stretches that may be closed when they are come to; none when left out. */
  closed?: readonly SpanM[];
  /** Stretches for which no extract would show a supply, in route order. */
  uncovered: readonly SpanM[];
  /** Water: stretches on which more is drunk than the rig's own use, in route order; none when left out. */
  hotter?: readonly HotterStretch[];
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

/** A millimetre: stretches shorter than that are float noise of cutting. */
const NOISE_M = 1e-3;
/** Straight steps that make up more of a stretch than this leave it unknown (design rule). */
const MOST_STRAIGHT_SHARE = 1 / 5;

/** What is not known of the way between two places. */
export interface Doubt extends SpanM {
  /** A closed stretch, a jump, a point led to straight, straight steps, or what comes past the end of the route. */
  readonly of: SketchySpan['kind'] | 'closed' | 'onward';
  /** False where the verdict stands all the same: straight steps, whose need is raised, that are few. */
  readonly leavesUnknown: boolean;
}

/** What of a course its doubts are told from. */
export type Doubtful = Pick<Course, 'sketchy' | 'closed' | 'onward'>;

/**
 * What nobody knows of the way between two places, the gravest first: a stretch is closed, so that another way is driven,
 * of which nothing is known; a jump is bridged or a chosen point led to straight; straight steps make up more than a fifth; what comes past the end was not told. Fewer straight steps are
 * told, and leave the verdict as it is.
 */
export function doubtOf({ sketchy, closed = [], onward }: Doubtful, from: Place, to: Place): Doubt | null {
  const within = <Span extends SpanM>(spans: readonly Span[]): Span[] =>
    spans
      .map((span) => ({ ...span, fromM: Math.max(span.fromM, from.atM), toM: Math.min(span.toM, to.atM) }))
      .filter(({ fromM, toM }) => toM - fromM > NOISE_M);
  const [shut] = within(closed);
  if (shut !== undefined) return { of: 'closed', fromM: shut.fromM, toM: shut.toM, leavesUnknown: true };
  const inside = within(sketchy).map(({ kind, ...span }) => ({ of: kind, ...span }));
  const jump = inside.find((span) => span.of !== 'sparse');
  if (jump !== undefined) return { ...jump, leavesUnknown: true };
  const straightM = inside.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
  const longest = inside.reduce<(typeof inside)[number] | null>(
    (most, span) => (most === null || lengthM(span) > lengthM(most) ? span : most),
    null,
  );
  const tooMany = straightM > MOST_STRAIGHT_SHARE * (to.atM - from.atM) + NOISE_M;
  if (longest !== null && tooMany) return { ...longest, leavesUnknown: true };
  if (to.kind === 'end' && onward === null)
    return { of: 'onward', fromM: to.atM, toM: to.atM, leavesUnknown: true };
  return longest === null ? null : { ...longest, leavesUnknown: false };
}

type Place = Pick<Edge, 'kind' | 'atM'>;

const lengthM = ({ fromM, toM }: SpanM): number => toM - fromM;
