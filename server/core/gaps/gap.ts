import type { Evidence, Verdict } from '../../contract/common.ts';
import type { GapGrades } from '../../contract/crew.ts';
import type { Level } from '../quantity/level.ts';
import type { SpanM } from '../quantity/span.ts';
import type { Term } from '../quantity/term.ts';
import type { Passing } from '../supply/points/passing.ts';
import type { Doubt, Edge } from './course/course.ts';

/** An end of a gap as it is told. */
export type GapEdge = Readonly<Pick<Edge, 'kind' | 'id' | 'name' | 'atM' | 'detourM' | 'mostL'>>;

/** A point off the corridor, or one that does not count, that could rescue a short gap. */
export type Rescue = Pick<
  Passing,
  'id' | 'name' | 'kind' | 'atM' | 'offRouteM' | 'detourM' | 'evidence' | 'counts' | 'reasons'
>;

/** The stretch between two successive passings that count, for one commodity: metres, litres, days, all unrounded. */
export interface Gap {
  readonly from: GapEdge;
  readonly to: GapEdge;
  readonly lengthM: number;
  readonly wayM: number;
  readonly days: number;
  /** Aboard on leaving `from`. */
  readonly departL: number;
  readonly needL: number;
  readonly reserveL: number;
  readonly arriveL: number;
  readonly marginL: number;
  readonly verdict: Verdict;
  readonly acrossNoData: boolean;
  /** What is not known of the way; null when all is. */
  readonly doubt: Doubt | null;
  readonly weakest: Evidence | null;
  readonly extraL: number;
  readonly extraCans: number;
  readonly turnBackM: number | null;
  readonly skipHelps: boolean;
  readonly ifToFails: {
    readonly verdict: Verdict;
    readonly canReturn: boolean;
    readonly marginL: number;
  } | null;
  /** Where the level falls to the reserve, and to nothing; null when it does not inside the gap. */
  readonly reserveFromM: number | null;
  readonly runsDryM: number | null;
  /** The level along the gap: straight lines between these. */
  readonly levels: readonly Level[];
  /** Only for a gap that is short: nearest points up to 50 km off the route. */
  readonly rescue: readonly Rescue[];
  /** Of a water gap, where a crew tells the grades: both of them. */
  readonly grades?: GapGrades | null;
  /** The terms that way, need and reserve were summed from. */
  readonly working: {
    readonly wayM: readonly Term[];
    readonly needL: readonly Term[];
    readonly reserveL: readonly Term[];
  };
}

/** All gaps of one commodity, which tile the route, with what they were held against. */
export interface Report {
  /** Drawable litres of the fixed tanks. */
  readonly capacityL: number;
  readonly canL: number;
  readonly cansOwned: number;
  /** False for gases: no can, ever. */
  readonly takesCans: boolean;
  readonly cover: readonly SpanM[];
  readonly gaps: readonly Gap[];
  /** Index of the gap of greatest length, the first of ties. */
  readonly longest: number;
  /** Index of the gap of least margin, the first of ties. */
  readonly tightest: number;
}
