import type { Course, Edge } from '../../gaps/course/course.ts';
import { type DayClock, nightsOver } from '../../gaps/course/day-clock.ts';
import type { Detour } from '../../gaps/course/levels.ts';
import { sumBefore } from '../../gaps/course/profile.ts';
import { drivingDaysOfStanding, standingLPerDay } from '../../gaps/course/standing.ts';
import { at } from '../../lists/at.ts';
import { type CarrySide, drawableOf } from './carry-side.ts';
import { isSamePlace, type SupplyEdge } from './supply-edge.ts';

/** A halt that costs the other commodity something: a detour, both ways, or time. */
export interface Halt {
  readonly edge: SupplyEdge;
  readonly atM: number;
  /** There and back, metres. */
  readonly bothWaysM: number;
  /** What it costs the commodity that is not filled there, as metres of detour. */
  readonly costM: number;
  /** Days of driving that it takes away, the way there and back among them; left out where the payer has no clock. */
  readonly drivingDays?: number;
  /** Set where standing there takes hours of driving. */
  readonly standing?: HaltStanding;
}

interface HaltStanding {
  /** What the halt costs but for the night that it may bring onto a way, metres. */
  readonly plainM: number;
  /** Days of driving that it takes away. */
  readonly drivingDays: number;
  /** Metres of a night. */
  readonly nightM: number;
  readonly clock: DayClock;
}

/** The halts of a side as the course of the other commodity pays for them, in route order; those that cost nothing left out. */
export function haltsOf(side: CarrySide, payer: Course): readonly Halt[] {
  const ofSide = known.get(side) ?? new WeakMap<Course, readonly Halt[]>();
  known.set(side, ofSide);
  const halts =
    ofSide.get(payer) ??
    side.edges
      .filter(({ kind }) => kind === 'passing')
      .map((edge) => haltAt(side, edge, payer))
      .filter(({ costM }) => costM > 0);
  ofSide.set(payer, halts);
  return halts;
}

/** Sides are never changed, and every leg asks for the halts of the other: those known already. */
const known = new WeakMap<CarrySide, WeakMap<Course, readonly Halt[]>>();

function haltAt(side: CarrySide, edge: SupplyEdge, payer: Course): Halt {
  // How much will be filled is not settled yet: all that can be.
  const mostL = Math.min(
    edge.terms?.mostL ?? Number.POSITIVE_INFINITY,
    drawableOf(side) + side.mostCans * side.canL,
  );
  return haltOf(edge, (edge.waitDays ?? 0) + (edge.terms?.daysPerLitre ?? 0) * mostL, payer);
}

/** A halt with so many days of standing. */
function haltOf(edge: SupplyEdge, days: number, payer: Course): Halt {
  const bothWaysM = 2 * edge.detourM;
  const costM = bothWaysM + asDetourM(payer, days);
  const halt = { edge, atM: edge.atM, bothWaysM, costM };
  const { clock, off } = payer;
  if (clock === null) return halt;
  const detourDays = bothWaysM * off.days;
  if (days === 0) return { ...halt, drivingDays: detourDays };
  const drivingDays = drivingDaysOfStanding(clock, days, sumBefore(clock.usedShare, edge.atM));
  return {
    ...halt,
    drivingDays: detourDays + drivingDays,
    standing: { plainM: costM, drivingDays, nightM: clock.nightL / off.litres, clock },
  };
}

/** A halt as a way to an edge pays for it: with the night that falls on it because of the standing. */
function paidOn(halt: Halt, to: Edge): Halt {
  if (halt.standing === undefined) return halt;
  const { plainM, drivingDays, nightM, clock } = halt.standing;
  const nights = nightsOver(sumBefore(clock.usedShare, to.atM) + drivingDays);
  return { ...halt, costM: plainM + nights * nightM };
}

/** Whether a supply is where a halt is made. */
export const isAtHalt = (edge: Edge, halt: Halt): boolean => isSamePlace(edge, halt.edge);

/** Days of standing as the metres of detour that use as much. */
const asDetourM = (payer: Course, days: number): number =>
  days === 0 ? 0 : (days * standingLPerDay(payer)) / payer.off.litres;

/** Going to a supply that gives nothing, and back to the route, on the way to an edge; the waiting there included. */
export const haltInVain = (course: Course, edge: SupplyEdge, to: Edge): Halt =>
  paidOn(haltOf(edge, edge.waitDays ?? 0, course), to);

/** A way that goes on over a supply which gives nothing. */
interface WayOver {
  readonly from: Edge;
  readonly inVain: SupplyEdge;
  readonly to: Edge;
}

/** What halts cost on such a way, metres: that supply is one of them, once where the other commodity's is made there. */
export function costOverM(course: Course, halts: readonly Halt[], { from, inVain, to }: WayOver): number {
  const made = haltsBetween(halts, from, to);
  const isMade = made.some((halt) => isAtHalt(inVain, halt));
  return costOf(made) + (isMade ? 0 : haltInVain(course, inVain, to).costM);
}

/** Halts as they are driven. */
export const detoursOf = (halts: readonly Halt[]): Detour[] =>
  halts.map(({ atM, costM, drivingDays }) => ({
    atM,
    bothWaysM: costM,
    ...(drivingDays === undefined ? {} : { drivingDays }),
  }));

/** The same, gone back over: the way back has its own nights. */
export const detoursBack = (halts: readonly Halt[]): Detour[] =>
  detoursOf(halts.map((halt) => ({ ...halt, costM: halt.standing?.plainM ?? halt.costM })));

/** All that halts cost, metres. */
export const costOf = (halts: readonly Halt[]): number => halts.reduce((sum, { costM }) => sum + costM, 0);

/**
 * Halts of the other commodity, in route order, on the way from one edge to the next. One at the very place of an edge
 * lies before it, where it is not the edge's own.
 */
export function haltsBetween(halts: readonly Halt[], from: Edge, to: Edge): Halt[] {
  const between: Halt[] = [];
  const begin = from.kind === 'start' ? 0 : firstBehind(halts, from.atM);
  for (let index = begin; index < halts.length; index += 1) {
    const halt = at(halts, index);
    if (halt.atM > to.atM) break;
    if (halt.atM <= from.atM && halt.atM !== 0) continue;
    if (!isSamePlace(halt.edge, from) && !isSamePlace(halt.edge, to)) between.push(paidOn(halt, to));
  }
  return between;
}

/** The index of the first halt behind a place of the route. */
function firstBehind(halts: readonly Halt[], atM: number): number {
  let low = 0;
  let high = halts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at(halts, middle).atM > atM) high = middle;
    else low = middle + 1;
  }
  return low;
}
