import { amountBetween, breaksInside, jumpAt } from '../../gaps/profile.ts';
import { standingLPerDay } from '../../gaps/standing.ts';
import {
  bearableL,
  cansAllowed,
  fewestCans,
  fillDays,
  type Hop,
  type Leg,
  type LegNeed,
  legNeed,
  spareM,
  tanksL,
  withFilling,
} from './leg.ts';
import { pourAfterL } from './pour.ts';
import { type CarrySide, costOf, type Halt, haltsBetween, isBound } from './problem.ts';

/** Numbers of full cans beyond the fewest that are to be looked at between two edges. */
export type MoreCans = (from: number, to: number, fewest: number) => readonly number[];

/**
 * Every leg of one hop that a plan of one commodity may be made of: from each supply that gives all that is wanted to
 * each later one that can be reached with at most `mostCans` cans, with the fewest cans that it needs, and with more
 * where halts of the other commodity may ask for them (or `moreCans` does).
 */
export function legsOf(side: CarrySide, foreign: readonly Halt[], moreCans: MoreCans = () => []): Leg[] {
  const legs: Leg[] = [];
  const last = side.edges.length - 1;
  for (let from = 0; from < last; from += 1) {
    if (isBound(side.edges[from]!)) continue;
    const allowed = cansAllowed(side, from);
    const mostL = bearableL(side, tanksL(side, from), allowed);
    for (let to = from + 1; to <= last; to += 1) {
      if (alongL(side, from, to) > mostL + 1) break;
      if (isBound(side.edges[to]!)) continue;
      const need = legNeed(side, from, to);
      const fewest = fewestCans(side, from, need, 0, side.mostCans);
      if (fewest === null) continue;
      const allM = costOf(haltsBetween(foreign, side.edges[from]!, side.edges[to]!));
      const most = fewestCans(side, from, need, allM, side.mostCans) ?? allowed;
      const counts = new Set<number>();
      for (let cans = fewest; cans <= most; cans += 1) counts.add(cans);
      for (const cans of moreCans(from, to, fewest)) if (cans <= allowed) counts.add(cans);
      for (const cans of [...counts].sort((a, b) => a - b)) {
        const tankL = tanksL(side, from);
        legs.push(
          legOver(side, [hopWith(side, from, to, { tankL, cans, filledL: tankL + cans * side.canL })]),
        );
      }
    }
  }
  return legs;
}

/** A hop left with so much; `spareM` is negative where it does not bear even its own way. */
export function hopWith(
  side: CarrySide,
  from: number,
  to: number,
  left: Pick<Hop, 'tankL' | 'cans' | 'filledL'>,
): Hop {
  const need = withFilling(side, legNeed(side, from, to), from, left.filledL);
  return { from, to, ...left, spareM: spareM(side, need, bearableL(side, left.tankL, left.cans)) };
}

export function legOver(side: CarrySide, hops: readonly [Hop, ...Hop[]]): Leg {
  const [first] = hops;
  const canM = hops.reduce((sum, hop) => sum + canMetres(side, hop), 0);
  const need = withFilling(side, legNeed(side, first.from, first.to), first.from, first.filledL);
  const spareL = hops.length > 1 ? 0 : bearableL(side, first.tankL, first.cans) - need.needL;
  return { from: first.from, to: hops.at(-1)!.to, hops, spareL, canM };
}

/** Litres that go on the route alone: what a leg to any farther edge needs at the least. */
export function alongL({ course, edges }: CarrySide, from: number, to: number): number {
  const { out } = course.litres;
  return amountBetween(out, edges[from]!.atM, edges[to]!.atM);
}

/** Metres along the route from filling to pouring, summed over the cans. */
export function canMetres(side: CarrySide, { from, to, tankL, cans, filledL }: Hop): number {
  if (cans === 0) return 0;
  const { course, edges, canL } = side;
  const capacityL = course.rig[course.commodity].drawableL;
  const need = withFilling(side, legNeed(side, from, to), from, filledL);
  const after = pourAfterL({ capacityL, tankL, canL, cans });
  const fromM = edges[from]!.atM;
  return after.reduce((sum, usedL) => sum + (placeUsed(side, { from, to, filledL }, need, usedL) - fromM), 0);
}

/** Metres along the route where so many litres have been used since leaving `from`; the leg's end where never. */
function placeUsed(
  side: CarrySide,
  { from, to, filledL }: Pick<Hop, 'from' | 'to' | 'filledL'>,
  need: LegNeed,
  usedL: number,
): number {
  const { course, edges } = side;
  const { out } = course.litres;
  const fromM = edges[from]!.atM;
  const toM = edges[to]!.atM;
  const spread = spreadOf(side, from, to, need);
  const fillingL = fillDays(edges[from]!, filledL) * standingLPerDay(course);
  let used = (edges[from]!.detourM * course.off.litres + fillingL) * spread;
  if (usedL <= used) return fromM;
  let reachedM = fromM;
  for (const atM of [...breaksInside(out, fromM, toM), toM]) {
    const standing = jumpAt(out, reachedM) * spread;
    if (reachedM < toM) used += standing;
    if (usedL <= used) return reachedM;
    const driven = amountBetween(out, reachedM, atM) * spread - standing;
    if (usedL <= used + driven && driven > 0) return reachedM + ((usedL - used) / driven) * (atM - reachedM);
    used += driven;
    reachedM = atM;
  }
  return toM;
}

/** What is charged for each litre that goes along the way: water goes by every day begun. */
function spreadOf({ course, edges }: CarrySide, from: number, to: number, need: LegNeed): number {
  if (course.commodity === 'fuel') return 1;
  const plainL = need.days * course.rig.water.litresPerDay.high;
  const along = amountBetween(course.litres.out, edges[from]!.atM, edges[to]!.atM);
  return plainL === 0 || along === 0 ? 1 : need.needL / plainL;
}
