import { amountBetween, breaksInside, jumpAt } from '../../gaps/course/profile.ts';
import { fillingL } from '../../gaps/course/standing.ts';
import { type CarrySide, drawableOf, endsOf } from '../side/carry-side.ts';
import type { Hop } from './leg.ts';
import { leaving } from './leg-need.ts';
import { pourAfterL } from './pour.ts';

/** Metres along the route from filling to pouring, summed over the cans; halts of the other commodity left out. */
export function canMetres(side: CarrySide, hop: Omit<Hop, 'spareM'>): number {
  const { tankL, cans } = hop;
  if (cans === 0) return 0;
  const [from] = endsOf(side, hop);
  const after = pourAfterL({ capacityL: drawableOf(side), tankL, canL: side.canL, cans });
  return after.reduce((sum, usedL) => sum + (placeUsed(side, hop, usedL) - from.atM), 0);
}

/** Metres along the route where so many litres have been used since leaving `from`; the hop's end where never. */
function placeUsed(side: CarrySide, hop: Pick<Hop, 'from' | 'to' | 'filledL'>, usedL: number): number {
  const { course } = side;
  const { out } = course.litres;
  const [from, to] = endsOf(side, hop);
  let goneL = from.detourM * course.off.litres + fillingL(course, leaving(from, hop.filledL));
  if (usedL <= goneL) return from.atM;
  let reachedM = from.atM;
  for (const atM of [...breaksInside(out, from.atM, to.atM), to.atM]) {
    const standingL = jumpAt(out, reachedM);
    if (reachedM < to.atM) goneL += standingL;
    if (usedL <= goneL) return reachedM;
    const drivingL = amountBetween(out, reachedM, atM) - standingL;
    if (usedL <= goneL + drivingL && drivingL > 0)
      return reachedM + ((usedL - goneL) / drivingL) * (atM - reachedM);
    goneL += drivingL;
    reachedM = atM;
  }
  return to.atM;
}
