import { amountBetween, breaksInside, jumpAt } from '../../gaps/profile.ts';
import { standingLPerDay } from '../../gaps/standing.ts';
import { type CarrySide, drawableOf, endsOf } from '../side/carry-side.ts';
import type { Hop } from './leg.ts';
import { fillDays, filledNeed, type LegNeed } from './leg-need.ts';
import { pourAfterL } from './pour.ts';

/** Metres along the route from filling to pouring, summed over the cans; halts of the other commodity left out. */
export function canMetres(side: CarrySide, hop: Omit<Hop, 'spareM'>): number {
  const { tankL, cans, filledL } = hop;
  if (cans === 0) return 0;
  const [from] = endsOf(side, hop);
  const need = filledNeed(side, hop, filledL);
  const after = pourAfterL({ capacityL: drawableOf(side), tankL, canL: side.canL, cans });
  return after.reduce((sum, usedL) => sum + (placeUsed(side, hop, need, usedL) - from.atM), 0);
}

/** Metres along the route where so many litres have been used since leaving `from`; the hop's end where never. */
function placeUsed(
  side: CarrySide,
  hop: Pick<Hop, 'from' | 'to' | 'filledL'>,
  need: LegNeed,
  usedL: number,
): number {
  const { course } = side;
  const { out } = course.litres;
  const [from, to] = endsOf(side, hop);
  const spread = spreadOf(side, hop, need);
  const fillingL = fillDays(from, hop.filledL) * standingLPerDay(course);
  let goneL = (from.detourM * course.off.litres + fillingL) * spread;
  if (usedL <= goneL) return from.atM;
  let reachedM = from.atM;
  for (const atM of [...breaksInside(out, from.atM, to.atM), to.atM]) {
    const standingL = jumpAt(out, reachedM) * spread;
    if (reachedM < to.atM) goneL += standingL;
    if (usedL <= goneL) return reachedM;
    const drivingL = amountBetween(out, reachedM, atM) * spread - standingL;
    if (usedL <= goneL + drivingL && drivingL > 0)
      return reachedM + ((usedL - goneL) / drivingL) * (atM - reachedM);
    goneL += drivingL;
    reachedM = atM;
  }
  return to.atM;
}

/** What is charged for each litre that goes along the way: water goes by every day begun. */
function spreadOf(side: CarrySide, hop: Pick<Hop, 'from' | 'to'>, need: LegNeed): number {
  const { course } = side;
  if (course.commodity === 'fuel') return 1;
  const [from, to] = endsOf(side, hop);
  const plainL = need.days * course.rig.water.litresPerDay.high;
  const along = amountBetween(course.litres.out, from.atM, to.atM);
  return plainL === 0 || along === 0 ? 1 : need.needL / plainL;
}
