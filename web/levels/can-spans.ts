import type { Span } from '../../server/contract/common.ts';
import type { PlanCarry } from '../../server/contract/plan.ts';
import { pairsOf } from '../kit/pairs.ts';

/** A stretch with the same count of full cans all along. */
export interface CanSpan extends Span {
  cans: number;
}

/** What is carried as stretches of one count each, falling where a can is poured; none without length or cans. */
export function canSpans({ cans, fromKm, toKm, pourAtKm }: PlanCarry): CanSpan[] {
  return pairsOf([fromKm, ...pourAtKm, toKm])
    .map(([startKm, endKm], poured) => ({ fromKm: startKm, toKm: endKm, cans: cans - poured }))
    .filter((span) => span.toKm > span.fromKm && span.cans > 0);
}
