import type { Evidence } from '../../../contract/common.ts';
import { aboardOf } from '../../crew/needs/graded-store.ts';
import type { EdgeM } from '../../gaps/course.ts';
import { drinkingShare } from '../../gaps/gap-grades.ts';
import { reserveOf, wayOf } from '../../gaps/need.ts';
import { amountBetween } from '../../gaps/profile.ts';
import { standingLPerDay } from '../../gaps/standing.ts';
import { SLACK } from '../../quantity/slack.ts';
import type { CarrySide, SupplyEdge } from './problem.ts';

/** The way from a supply to the next that is used, with everything between them passed by. */
export interface Hop {
  /** Indexes of the side's edges. */
  from: number;
  to: number;
  /** On leaving `from`: full cans, litres in the tanks, and litres that were filled in there at the most. */
  cans: number;
  tankL: number;
  filledL: number;
  /** Metres of detours to supplies of the other commodity that the hop still bears, there and back. */
  spareM: number;
}

/**
 * From one supply that gives all that is wanted to the next such: one hop, or several over supplies that do not. What it
 * leaves with hangs on nothing before it.
 */
export interface Leg {
  /** Indexes of the side's edges. */
  from: number;
  to: number;
  hops: readonly [Hop, ...Hop[]];
  /** Litres by which the tanks may be left short without breaking the reserve; nothing is spent on detours then. */
  spareL: number;
  /** From filling to pouring, summed over the cans, metres along the route; halts of the other commodity left out. */
  canM: number;
}

/**
 * The most full cans on a leg at a place strictly inside it. Where less is used than was allowed for, a can may still be
 * full past a supply at which it was to be filled again.
 */
export function mostCansAt(edges: readonly SupplyEdge[], { hops }: Pick<Leg, 'hops'>, atM: number): number {
  const index = hops.findIndex(({ to }) => edges[to]!.atM > atM);
  return Math.max(hops[index]?.cans ?? 0, hops[index - 1]?.cans ?? 0);
}

/** What every way between two edges needs, whatever is aboard. */
export interface LegNeed {
  /** Litres charged, without detours to supplies of the other commodity. */
  needL: number;
  /** Water: days that the way takes, before they are charged. */
  days: number;
}

/** Sides are never changed, and each way is asked for by many legs. */
const needs = new WeakMap<CarrySide, Map<number, LegNeed>>();

/** Without the time that filling takes. */
export function legNeed(side: CarrySide, from: number, to: number): LegNeed {
  let known = needs.get(side);
  if (known === undefined) {
    known = new Map();
    needs.set(side, known);
  }
  const key = from * side.edges.length + to;
  let need = known.get(key);
  if (need === undefined) {
    need = reckonNeed(side, from, to);
    known.set(key, need);
  }
  return need;
}

function reckonNeed(side: CarrySide, from: number, to: number): LegNeed {
  const { course, edges } = side;
  const way = wayOf(course, edges[from]!, edges[to]!);
  if (course.commodity === 'fuel') {
    const along = amountBetween(course.litres.out, edges[from]!.atM, edges[to]!.atM);
    const standingL = way.standingDays * standingLPerDay(course);
    return { needL: along + way.offM * course.off.litres + standingL, days: way.days };
  }
  return { needL: chargedL(side, way.days), days: way.days };
}

/** Litres of water for so many days. */
function chargedL({ course }: CarrySide, days: number): number {
  const charged = course.charge === 'elapsed' ? days : Math.ceil(days - SLACK);
  return charged * course.rig.water.litresPerDay.high;
}

/** With the time that it takes to fill so many litres where the way begins. */
export function withFilling(side: CarrySide, need: LegNeed, from: number, filledL: number): LegNeed {
  const days = fillDays(side.edges[from]!, filledL);
  return days === 0 ? need : later(side, need, days, days * standingLPerDay(side.course));
}

/** With metres of detours on the way. */
export function withDetours(side: CarrySide, need: LegNeed, viaM: number): LegNeed {
  const { off } = side.course;
  return viaM === 0 ? need : later(side, need, viaM * off.days, viaM * off.litres);
}

const later = (side: CarrySide, need: LegNeed, days: number, litres: number): LegNeed => ({
  days: need.days + days,
  needL: side.course.commodity === 'fuel' ? need.needL + litres : chargedL(side, need.days + days),
});

/** Days that filling so many litres at a supply takes. */
export const fillDays = ({ terms }: SupplyEdge, litres: number): number =>
  (terms?.daysPerLitre ?? 0) * litres;

/** A supply as it is left with so many litres filled in. */
export function leaving(edge: SupplyEdge, filledL: number): SupplyEdge {
  const days = fillDays(edge, filledL);
  return days === 0 ? edge : { ...edge, fillDays: days };
}

/** Litres in the fixed tanks on leaving an edge, as full as they may be. */
export const tanksL = ({ course, startL }: CarrySide, from: number): number =>
  from === 0 ? startL : course.rig[course.commodity].drawableL;

/** The most full cans on leaving an edge. */
export const cansAllowed = (side: CarrySide, from: number): number =>
  from === 0 && !side.cansAtStart ? 0 : side.mostCans;

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
    const filling = withFilling(side, need, from, tankL + cans * side.canL);
    if (spareM(side, filling, bearableL(side, tankL, cans)) >= viaM) return cans;
  }
  return null;
}

/** What the evidence of a leg is at its weaker end; null between start and end. */
export function weakestEnd(from: EdgeM, to: EdgeM): Evidence | null {
  const ranks: Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
  return ranks.find((rank) => from.evidence === rank || to.evidence === rank) ?? null;
}
