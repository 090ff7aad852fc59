import type { Span } from '../../server/contract/common.ts';
import type { PlanCarry } from '../../server/contract/plan.ts';

/** A stretch with the same count of full cans all along. */
export interface CanSpan extends Span {
  cans: number;
}

/** What is carried as stretches of one count each, falling where a can is poured; none without length or cans. */
export function canSpans({ cans, fromKm, toKm, pourAtKm }: PlanCarry): CanSpan[] {
  const ends = [...pourAtKm, toKm];
  return ends
    .map((endKm, poured) => ({
      fromKm: poured === 0 ? fromKm : ends[poured - 1]!,
      toKm: endKm,
      cans: cans - poured,
    }))
    .filter((span) => span.toKm > span.fromKm && span.cans > 0);
}
