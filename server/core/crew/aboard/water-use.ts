import type { Caution } from '../../phrases/cautions.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import type { Loss } from '../../phrases/rig/crew.ts';
import type { SpanM } from '../../quantity/span.ts';
import type { Term } from '../../quantity/term.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import type { HeatEffect } from '../needs/heat.ts';
import type { UseRow } from '../needs/use-rows.ts';
import type { WaterState } from './grade-after.ts';

/** Where the water reserve is, and whether it is safe there. */
export interface ReserveWater {
  /** Litres that every gap must leave, before any share of its need. */
  readonly litres: number;
  /** Days of drinking grade that these are. */
  readonly days: number;
  /** Until the alarm and until help; null where neither was told. */
  readonly hoursToHelp: number | null;
  /** With all full: what is left of drinking grade when the worst single leak, pump or tap empties what it can. */
  readonly safeL: number;
  readonly worstLoss: Loss;
  readonly holds: boolean;
}

/** Water of one grade aboard at the start, and how long it lasts. */
export interface GradeAboard {
  readonly litresPerDay: UseRange;
  readonly aboardL: number;
  /** Null where it is not used. */
  readonly enduranceDays: UseRange | null;
}

/** A fill along the route that makes the water of containers or pipes less fit. */
export interface Mixing extends WaterState {
  readonly atM: number;
  readonly id: string;
  readonly text: Phrase;
}

/** A stretch of which the heat was told, and the water of its days at the rate the verdict uses. */
export interface HeatOnRoute extends SpanM {
  readonly litresPerDay: number;
  /** Of it, more than elsewhere. */
  readonly addedPerDay: number;
}

/** The water of a trip in full: what the litres were reckoned with, and how long they last. */
export interface WaterUse {
  /** `rate`: the rig's own litres a day; `crew`: summed from people and pets; `observed`: your figure, split by the crew. */
  readonly from: 'rate' | 'crew' | 'observed';
  readonly litresPerDay: UseRange;
  /** By use and grade, all people together; they add up to `litresPerDay`. Empty where no crew is told. */
  readonly uses: readonly UseRow[];
  /** Washing water that is taken at the source and not carried; not in `uses`. */
  readonly notCarriedLitresPerDay: UseRange;
  /** Null where no crew is told: then all water is taken for drinking grade. */
  readonly grades: { readonly drinking: GradeAboard; readonly washing: GradeAboard } | null;
  readonly aboardL: number;
  readonly enduranceDays: UseRange;
  readonly heat: HeatEffect | null;
  /** Stretches of which the heat was told, in the order of the trip. */
  readonly inHeat: readonly HeatOnRoute[];
  readonly reserve: ReserveWater;
  /** Where treatment happens; null without a treatment line. */
  readonly treatAt: 'filling' | 'tap' | null;
  readonly mixing: readonly Mixing[];
  readonly treatText: Phrase;
  readonly cautions: readonly Caution[];
  /** What the litres a day were summed from, at the rate the verdict uses. */
  readonly working: readonly Term[];
}
