import { amountBetween, breaksInside, jumpAt } from '../gaps/profile.ts';
import { bearableL, fewestCans, type Leg, type LegNeed, legNeed, spareM, tanksL } from './leg.ts';
import { pourAfterL } from './pour.ts';
import { type CarrySide, type Halt, haltsBetween } from './problem.ts';

/**
 * Every leg that a plan of one commodity may be made of: from each edge to each later one that can be reached with at
 * most `mostCans` cans, with the fewest cans that it needs, and with more where halts of the other commodity may ask for
 * them (or `moreCans` does).
 */
export function legsOf(
  side: CarrySide,
  foreign: readonly Halt[],
  moreCans: (from: number, to: number, fewest: number) => readonly number[] = () => [],
): Leg[] {
  const legs: Leg[] = [];
  const last = side.edges.length - 1;
  for (let from = 0; from < last; from += 1) {
    const mostL = bearableL(side, tanksL(side, from), from === 0 && !side.cansAtStart ? 0 : side.mostCans);
    for (let to = from + 1; to <= last; to += 1) {
      if (alongL(side, from, to) > mostL + 1) break;
      const need = legNeed(side, from, to);
      const fewest = fewestCans(side, from, need, 0, side.mostCans);
      if (fewest === null) continue;
      const allM = haltsBetween(foreign, side.edges[from]!, side.edges[to]!).reduce(
        (sum, halt) => sum + halt.bothWaysM,
        0,
      );
      const cansAllowed = from === 0 && !side.cansAtStart ? 0 : side.mostCans;
      const most = fewestCans(side, from, need, allM, side.mostCans) ?? cansAllowed;
      const counts = new Set<number>();
      for (let cans = fewest; cans <= most; cans += 1) counts.add(cans);
      for (const cans of moreCans(from, to, fewest)) if (cans <= cansAllowed) counts.add(cans);
      for (const cans of [...counts].sort((a, b) => a - b)) legs.push(legWith(side, from, to, need, cans));
    }
  }
  return legs;
}

function legWith(side: CarrySide, from: number, to: number, need: LegNeed, cans: number): Leg {
  const mostL = bearableL(side, tanksL(side, from), cans);
  return {
    from,
    to,
    cans,
    spareM: spareM(side, need, mostL),
    spareL: mostL - need.needL,
    canM: canMetres(side, from, to, need, cans),
  };
}

/** Litres that go on the route alone: what a leg to any farther edge needs at the least. */
function alongL({ course, edges }: CarrySide, from: number, to: number): number {
  const { out } = course.litres;
  return amountBetween(out, edges[from]!.atM, edges[to]!.atM);
}

/** Metres along the route from filling to pouring, summed over the cans. */
function canMetres(side: CarrySide, from: number, to: number, need: LegNeed, cans: number): number {
  if (cans === 0) return 0;
  const { course, edges, canL } = side;
  const capacityL = course.rig[course.commodity].drawableL;
  const after = pourAfterL({ capacityL, tankL: tanksL(side, from), canL, cans });
  const fromM = edges[from]!.atM;
  return after.reduce((sum, usedL) => sum + (placeUsed(side, from, to, need, usedL) - fromM), 0);
}

/** Metres along the route where so many litres have been used since leaving `from`; the leg's end where never. */
export function placeUsed(side: CarrySide, from: number, to: number, need: LegNeed, usedL: number): number {
  const { course, edges } = side;
  const { out } = course.litres;
  const fromM = edges[from]!.atM;
  const toM = edges[to]!.atM;
  const spread = spreadOf(side, from, to, need);
  let used = edges[from]!.detourM * course.off.litres * spread;
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
  const alongL = amountBetween(course.litres.out, edges[from]!.atM, edges[to]!.atM);
  return plainL === 0 || alongL === 0 ? 1 : need.needL / plainL;
}
