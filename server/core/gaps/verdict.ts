import type { Verdict } from '../../contract/common.ts';
import { SLACK } from '../quantity/slack.ts';

/** Better verdicts rank higher; not knowing is better than knowing that it fails. */
export const VERDICT_RANK: Record<Verdict, number> = { short: 0, unknown: 1, 'into-reserve': 2, enough: 3 };

/** The worse of two. */
export const worseOf = (a: Verdict, b: Verdict): Verdict => (VERDICT_RANK[a] <= VERDICT_RANK[b] ? a : b);

export interface VerdictFacts {
  arriveL: number;
  marginL: number;
  /** Metres along the route where nothing is left; null when something is left on arrival. */
  runsDryM: number | null;
  /** Metres along the route where the first stretch without cover begins; null when all is covered. */
  firstUncoveredM: number | null;
  /** The gap holds a straight line where a road is meant, or its far end is not known. */
  atBestUnknown: boolean;
}

/**
 * The verdict of a gap. Stretches without cover are reckoned as dry: a gap that holds in spite of them holds; one
 * that runs dry before the first of them is short; else nobody knows.
 */
export function verdictOf(facts: VerdictFacts): Verdict {
  const holds = facts.marginL >= -SLACK ? 'enough' : facts.arriveL >= -SLACK ? 'into-reserve' : null;
  if (holds !== null) return facts.atBestUnknown ? 'unknown' : holds;
  if (facts.firstUncoveredM === null) return 'short';
  return facts.runsDryM !== null && facts.runsDryM < facts.firstUncoveredM ? 'short' : 'unknown';
}
