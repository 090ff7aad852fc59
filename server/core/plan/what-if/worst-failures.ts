import { VERDICT_RANK } from '../../gaps/verdict.ts';
import type { Basis } from '../drive/basis.ts';
import type { StopFailure } from './stop-fails.ts';

/** Without a plan all supplies are used, thousands in some lands: of no more than so many it is told what their failing does (ours). */
export const MOST_WITHOUT_PLAN = 20;

/** The failures to tell, in the order in which they came: with a plan all, else the worst of them. */
export function worstFailures({ kind }: Basis, failures: readonly StopFailure[]): readonly StopFailure[] {
  if (kind === 'plan' || failures.length <= MOST_WITHOUT_PLAN) return failures;
  const worst = [...failures]
    .sort(
      (a, b) => VERDICT_RANK[a.row.verdict] - VERDICT_RANK[b.row.verdict] || a.row.marginL - b.row.marginL,
    )
    .slice(0, MOST_WITHOUT_PLAN);
  const kept = new Set(worst);
  return failures.filter((failure) => kept.has(failure));
}
