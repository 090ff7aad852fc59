import type { Evidence } from '../../contract/common.ts';
import { drinkingShare } from '../crew/gap-grades.ts';
import { aboardOf } from '../crew/graded-store.ts';
import type { EdgeM } from '../gaps/course.ts';
import { reserveOf, SLACK, wayOf } from '../gaps/need.ts';
import { amountBetween } from '../gaps/profile.ts';
import type { CarrySide } from './problem.ts';

/** One way from a supply to the next that is used, with everything between them passed by. */
export interface Leg {
  /** Indexes of the side's edges. */
  from: number;
  to: number;
  /** Full cans on leaving `from`. */
  cans: number;
  /** Metres of detours to supplies of the other commodity that the leg still bears, there and back. */
  spareM: number;
  /** Litres by which the tanks may be left short without breaking the reserve; nothing is spent on `spareM` then. */
  spareL: number;
  /** From filling to pouring, summed over the cans, metres along the route; halts of the other commodity left out. */
  canM: number;
}

/** What every leg between two edges needs, whatever is aboard. */
export interface LegNeed {
  /** Litres charged, without detours to supplies of the other commodity. */
  needL: number;
  /** Water: days that the way takes, before they are charged. */
  days: number;
}

export function legNeed(side: CarrySide, from: number, to: number): LegNeed {
  const { course, edges } = side;
  const way = wayOf(course, edges[from]!, edges[to]!);
  if (course.commodity === 'fuel') {
    const along = amountBetween(course.litres.out, edges[from]!.atM, edges[to]!.atM);
    return { needL: along + way.offM * course.off.litres, days: way.days };
  }
  return { needL: chargedDays(side, way.days) * course.rig.water.litresPerDay.high, days: way.days };
}

const chargedDays = ({ course }: CarrySide, days: number): number =>
  course.charge === 'elapsed' ? days : Math.ceil(days - SLACK);

/** Litres in the fixed tanks on leaving an edge, as full as they may be. */
export const tanksL = ({ course, startL }: CarrySide, from: number): number =>
  from === 0 ? startL : course.rig[course.commodity].drawableL;

/**
 * The most that a leg may need so that the reserve is intact on arrival, litres of all water: the reserve grows with the
 * need, and of drinking grade, where it is known, enough must be left as well.
 */
export function bearableL(side: CarrySide, tankL: number, cans: number): number {
  const { course, canL, cansDrinkable } = side;
  const { rig, commodity } = course;
  const { shareOfNeed } = rig[commodity].reserve;
  const baseL = reserveOf(course, 0).litres;
  const ofAllL = (tankL + cans * canL - baseL) / (1 + shareOfNeed);
  const store = commodity === 'water' ? rig.water.grades : null;
  if (store === null) return ofAllL;
  const share = drinkingShare(rig) + shareOfNeed;
  if (share === 0) return ofAllL;
  const { drinkingL, anyL } = aboardOf(store, tankL);
  const drinkableL = drinkingL + anyL + (cansDrinkable ? cans * canL : 0);
  return Math.min(ofAllL, (drinkableL - baseL) / share);
}

/** Metres of detours beyond the leg's own that what is aboard still bears; negative where the leg itself is too much. */
export function spareM(side: CarrySide, need: LegNeed, mostL: number): number {
  const { course } = side;
  const { high } = course.rig.water.litresPerDay;
  if (course.commodity === 'fuel') return (mostL - need.needL + SLACK) / course.off.litres;
  const mostDays = mostL / high;
  const borne = course.charge === 'elapsed' ? mostDays : Math.floor(mostDays + SLACK);
  return (borne - need.days + SLACK) / course.off.days;
}

/** Fewest cans with which a leg bears its own way and `viaM` metres of further detours; null above `most`. */
export function fewestCans(
  side: CarrySide,
  from: number,
  need: LegNeed,
  viaM: number,
  most: number,
): number | null {
  const tankL = tanksL(side, from);
  const limit = from === 0 && !side.cansAtStart ? 0 : most;
  for (let cans = 0; cans <= limit; cans += 1) {
    if (spareM(side, need, bearableL(side, tankL, cans)) >= viaM) return cans;
  }
  return null;
}

/** What the evidence of a leg is at its weaker end; null between start and end. */
export function weakestEnd(from: EdgeM, to: EdgeM): Evidence | null {
  const ranks: Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
  return ranks.find((rank) => from.evidence === rank || to.evidence === rank) ?? null;
}
