import type { Commodity, Verdict } from '../../../contract/common.ts';
import type { PlanEdge } from '../../../contract/plan.ts';
import { VERDICT_RANK } from '../../../core/gaps/verdict.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import type { PlannedTrip } from '../../plan-trip.ts';

/** A stretch of one commodity that one goes by: a leg of the plan, or without one a gap. */
export interface Stretch {
  readonly commodity: Commodity;
  readonly from: Pick<PlanEdge, 'id' | 'kind' | 'name' | 'atKm'>;
  readonly to: Pick<PlanEdge, 'id' | 'kind' | 'name' | 'atKm'>;
  readonly verdict: Verdict;
  readonly needL: number;
  readonly reserveL: number;
  readonly marginL: number;
  readonly runsDryKm: number | null;
  readonly reserveFromKm: number | null;
}

/** All stretches that one goes by, of both commodities in the order of the road. A plan never eats into its reserve. */
export function stretchesOf({ analysis, plan }: PlannedTrip): Stretch[] {
  const found = plan.status === 'found';
  return COMMODITIES.flatMap((commodity): Stretch[] =>
    found
      ? plan.legs[commodity].map((leg) => ({ commodity, ...leg, runsDryKm: null, reserveFromKm: null }))
      : analysis[commodity].gaps.map((gap) => ({ commodity, ...gap })),
  ).sort((a, b) => a.from.atKm - b.from.atKm);
}

/** The worst first: by verdict, then the one of least margin. */
export const worstFirst = <Any extends Pick<Stretch, 'verdict' | 'marginL'>>(
  stretches: readonly Any[],
): Any[] =>
  stretches.toSorted((a, b) => VERDICT_RANK[a.verdict] - VERDICT_RANK[b.verdict] || a.marginL - b.marginL);
