import { amountBetween, breaksInside, jumpAt } from '../../gaps/course/profile.ts';
import { fillingL } from '../../gaps/course/standing.ts';
import { numberIn } from '../../lists/at.ts';
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
  return placesUsed(side, hop, after).reduce((sum, placeM) => sum + (placeM - from.atM), 0);
}

/**
 * Metres along the route where so many litres, the fewest first, have been used since leaving `from`; the hop's end
 * where never.
 */
function placesUsed(
  side: CarrySide,
  hop: Pick<Hop, 'from' | 'to' | 'filledL'>,
  usedL: readonly number[],
): number[] {
  const { course } = side;
  const { out } = course.litres;
  const [from, to] = endsOf(side, hop);
  let goneL = from.detourM * course.off.litres + fillingL(course, leaving(from, hop.filledL));
  let reachedM = from.atM;
  const places: number[] = [];
  const isGone = () => places.length < usedL.length && numberIn(usedL, places.length) <= goneL;
  while (isGone()) places.push(from.atM);
  for (const atM of [...breaksInside(out, from.atM, to.atM), to.atM]) {
    if (places.length === usedL.length) return places;
    const standingL = jumpAt(out, reachedM);
    if (reachedM < to.atM) goneL += standingL;
    while (isGone()) places.push(reachedM);
    const drivingL = amountBetween(out, reachedM, atM) - standingL;
    for (const wantedL of usedL.slice(places.length)) {
      if (wantedL > goneL + drivingL || drivingL <= 0) break;
      places.push(reachedM + ((wantedL - goneL) / drivingL) * (atM - reachedM));
    }
    goneL += drivingL;
    reachedM = atM;
  }
  return [...places, ...usedL.slice(places.length).map(() => to.atM)];
}
