import { amountBetween } from '../gaps/course/profile.ts';
import type { Gap } from '../gaps/gap.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { PaceEnd } from './pace-on.ts';
import type { PacePlan } from './pace-plan.ts';

/**
 * Water gaps that hold at the slow pace only because no night falls inside: at another pace, as at any delay, one may.
 * Only where that would change the verdict.
 */
export function nightInsideCautions(
  plan: PacePlan,
  gaps: readonly Gap[],
  waterLPerDay: number,
  shareOfNeed: number,
): Caution[] {
  const daysAt = (pace: PaceEnd, gap: Gap) =>
    amountBetween(plan.schedules[pace].elapsedH, gap.from.atM, gap.to.atM) / 24;
  return gaps.flatMap((gap) => {
    const moreDays = Math.max(daysAt('typical', gap), daysAt('fast', gap)) - daysAt('slow', gap);
    const moreL = moreDays * waterLPerDay;
    if (moreL <= 0) return [];
    const drinking = gap.grades?.drinking;
    const share = drinking === undefined || gap.needL === 0 ? 1 : drinking.needL / gap.needL;
    const moreDrinkingL = moreL * share;
    // The share of the need that is kept in reserve is of drinking grade.
    const reserveL = moreL * shareOfNeed;
    const emptied = turns(gap.arriveL, moreL) || turns(drinking?.arriveL, moreDrinkingL);
    const intoReserve =
      turns(gap.marginL, moreL + reserveL) || turns(drinking?.marginL, moreDrinkingL + reserveL);
    if (!emptied && !intoReserve) return [];
    return [
      {
        code: 'night-may-fall-inside',
        facts: { moreL, emptied },
        fromM: gap.from.atM,
        toM: gap.to.atM,
      },
    ];
  });
}

/** Whether so many litres more turn what is left into a lack. */
const turns = (leftL: number | undefined, moreL: number): boolean =>
  leftL !== undefined && leftL >= 0 && leftL - moreL < 0;
