import { amountBetween } from '../../gaps/course/profile.ts';
import { fillingL, nightDays, nightL, pushedNights, standingLPerDay } from '../../gaps/course/standing.ts';
import { waterFor, wayOf } from '../../gaps/need.ts';
import { mostWaterPerDay } from '../../rig/rig.ts';
import { type CarrySide, endsOf } from '../side/carry-side.ts';
import { fillDays, type SupplyEdge } from '../side/supply-edge.ts';

/** What every way between two edges needs, whatever is aboard. */
export interface LegNeed {
  /** Litres, without detours to supplies of the other commodity. */
  readonly needL: number;
  /** Days that the way takes. */
  readonly days: number;
}

/** Indexes of the side's edges. */
interface WayBetween {
  readonly from: number;
  readonly to: number;
}

/** Sides are never changed, and each way is asked for by many legs: the needs known already, by both indexes. */
const needsOf = new WeakMap<CarrySide, Map<number, LegNeed>>();

/** Without the time that filling takes, and what waiting where it begins brings onto it. */
export function legNeed(side: CarrySide, { from, to }: WayBetween): LegNeed {
  const needs = needsOf.get(side) ?? new Map<number, LegNeed>();
  needsOf.set(side, needs);
  const number = from * side.edges.length + to;
  const need = needs.get(number) ?? reckonNeed(side, ...endsOf(side, { from, to }));
  needs.set(number, need);
  return need;
}

function reckonNeed(side: CarrySide, begin: SupplyEdge, to: SupplyEdge): LegNeed {
  const { course } = side;
  const from = { ...begin, waitDays: 0 };
  const way = wayOf(course, from, to);
  if (course.commodity === 'water') {
    const { litres } = waterFor(course, { fromM: from.atM, toM: to.atM, days: way.days });
    return { needL: litres, days: way.days };
  }
  const alongL = amountBetween(course.litres.out, from.atM, to.atM);
  const standingL = way.standingDays * standingLPerDay(course);
  return { needL: alongL + way.offM * course.off.litres + standingL, days: way.days };
}

/** Litres of water for so many days. */
const waterL = ({ course }: CarrySide, days: number): number => days * course.rig.water.litresPerDay.high;

/** With the time that it takes to fill so many litres where the way begins, and the nights that come of it. */
function withFilling(side: CarrySide, need: LegNeed, way: WayBetween, filledL: number): LegNeed {
  const { course } = side;
  const [begin, to] = endsOf(side, way);
  const from = leaving(begin, filledL);
  const nights = pushedNights(course, from, to);
  const litres = fillingL(course, from) + nights * nightL(course);
  const days = course.commodity === 'water' && from.givesAll === true ? 0 : (from.fillDays ?? 0);
  return days === 0 && nights === 0 ? need : later(side, need, days + nights * nightDays(course), litres);
}

/** With metres of detours on the way. */
export function withDetours(side: CarrySide, need: LegNeed, viaM: number): LegNeed {
  const { off } = side.course;
  return viaM === 0 ? need : later(side, need, viaM * off.days, viaM * off.litres);
}

function later(side: CarrySide, need: LegNeed, days: number, litres: number): LegNeed {
  const { course } = side;
  const all = need.days + days;
  if (course.commodity === 'fuel') return { days: all, needL: need.needL + litres };
  const addedL = days * (mostWaterPerDay(course.rig) - course.rig.water.litresPerDay.high);
  return { days: all, needL: waterL(side, all) + addedByHeatL(side, need) + addedL };
}

/** Of a need of water, what heat adds to the days at the rig's own use. */
export const addedByHeatL = (side: CarrySide, { needL, days }: LegNeed): number => needL - waterL(side, days);

/** What a way needs with so many litres filled in where it begins. */
export const filledNeed = (side: CarrySide, way: WayBetween, filledL: number): LegNeed =>
  withFilling(side, legNeed(side, way), way, filledL);

/** A supply as it is left with so many litres filled in, where the way was chosen with so many. */
export function leaving(edge: SupplyEdge, filledL: number, chosenL = filledL): SupplyEdge {
  const days = fillDays(edge, filledL);
  if (days === 0) return edge;
  return { ...edge, fillDays: days, ...(chosenL > filledL && { chosenFillDays: fillDays(edge, chosenL) }) };
}

/** Litres that go on the route alone: what a leg to any farther edge needs at the least. */
export function alongL(side: CarrySide, way: WayBetween): number {
  const [from, to] = endsOf(side, way);
  return amountBetween(side.course.litres.out, from.atM, to.atM);
}
