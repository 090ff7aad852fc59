import type { Commodity, Verdict } from '../../../contract/common.ts';
import type { WhatIfKind } from '../../../contract/whatif.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import type { PlanEdge } from '../side/plan-edge.ts';

/** What of a row follows from the stretch that something makes worst; litres at the rate the verdict uses. */
export interface StretchFigures {
  /** From the supply behind to the next that is used. */
  readonly from: PlanEdge;
  readonly to: PlanEdge;
  /** What then does better: going on to `to`, or back to `from`. */
  readonly next: 'on' | 'back';
  readonly verdict: Verdict;
  /** On arrival by `next`; negative: missing. Of drinking grade, where that is less. */
  readonly arriveL: number;
  readonly marginL: number;
  /** Where nothing is left, metres along; null when it arrives. */
  readonly endsAtM: number | null;
  /** What would have brought it there with nothing left, and with the reserve. */
  readonly missingL: number;
  readonly coverL: number;
  /** Cans that hold `coverL`. */
  readonly coverCans: number;
  /** Up to here the supply behind can be regained with the reserve, if it has happened or happens here. */
  readonly turnBackM: number | null;
}

/** What of a row follows from the place where it happens. */
export interface PlaceFigures {
  /** The stop, or the worst place, metres along. Null for what holds all the way. */
  readonly atM: number | null;
  /** Litres lost there, or used by waiting there. */
  readonly lostL: number | null;
  /** Going back to `from` from there; null where the way cannot be driven back or there is no such place. */
  readonly backMarginL: number | null;
}

/** One thing that goes wrong, for one commodity, where it does most harm. */
export interface WhatIfRow extends StretchFigures, PlaceFigures {
  readonly kind: WhatIfKind;
  readonly commodity: Commodity;
  /** What happens. */
  readonly text: Phrase;
  /** The stop that fails. */
  readonly id: string | null;
  /** A supply that counts and the plan passes by, by way of which most is left; the figures are by way of it. */
  readonly instead: { readonly at: PlanEdge; readonly marginL: number } | null;
}

/** For rows that hold all the way: they happen at no place. */
export const ALL_THE_WAY = { atM: null, lostL: null, backMarginL: null } as const satisfies PlaceFigures;
