import type { Commodity } from '../../../contract/common.ts';
import type { Course, EdgeM } from '../../gaps/course.ts';
import { standingLPerDay } from '../../gaps/standing.ts';
import type { MassRoom } from './mass-room.ts';

/** What a supply gives, beyond its being one. */
export interface SupplyTerms {
  /** No more than this is to be had at one halt, litres; null: as much as is wanted. */
  mostL: number | null;
  /** Whether cans may be filled with it. */
  fillsCans: boolean;
  /** Days that filling, and treating meanwhile, take a litre. */
  daysPerLitre: number;
}

/** Start, end, or a passing that may be used; without terms a supply gives all that is wanted, at once. */
export interface SupplyEdge extends EdgeM {
  terms?: SupplyTerms;
  /** The user told something of it. */
  told?: boolean;
  /** Hours of waiting that its mapped hours ask for, part of `waitDays`. */
  opensInHours?: number;
}

/** What a plan has to decide about one commodity. */
export interface CarrySide {
  commodity: Commodity;
  course: Course;
  /** Start, every passing that may be used, end, in route order. */
  edges: readonly SupplyEdge[];
  /** In the fixed tanks on leaving the start, litres. */
  startL: number;
  /** Whether cans can be filled before the start. */
  cansAtStart: boolean;
  canL: number;
  /** Whether what is in the cans may be drunk; false only for cans kept for washing. */
  cansDrinkable: boolean;
  /** No plan may have more cans than this. */
  mostCans: number;
}

/** What has to hold when a stop turns out dry or shut. */
export interface FailureRule {
  spendReserve: boolean;
  /** The only stop that is asked to fail, by its number (see failing-stops.ts); every stop when left out. */
  onlyStop?: number;
}

/** Both commodities on one route, and the room that the permitted masses leave. */
export interface CarryProblem {
  sides: Record<Commodity, CarrySide>;
  /** Null where the rig tells no mass that is permitted. */
  room: MassRoom | null;
  /** Set where every stop that is used may turn out dry or shut, one at a time. */
  oneFailure: FailureRule | null;
  /** Not all supplies are looked at. */
  thinned?: boolean;
}

export const otherOf = (commodity: Commodity): Commodity => (commodity === 'fuel' ? 'water' : 'fuel');

/** Names the place that a passing halts at: fuel and water of one point are one halt with one detour. */
export const placeKey = (edge: EdgeM): string => `${edge.id} ${edge.atM}`;

/** Whether what the vehicle leaves a supply with hangs on what it comes with. */
export const isBound = ({ terms }: SupplyEdge): boolean =>
  terms !== undefined && (terms.mostL !== null || !terms.fillsCans);

/** A halt that costs the other commodity something: a detour, both ways, or time. */
export interface Halt {
  key: string;
  atM: number;
  /** There and back, metres. */
  bothWaysM: number;
  /** What it costs the commodity that is not filled there, as metres of detour. */
  costM: number;
}

/** The halts of a side as the course of the other commodity pays for them, in route order; those that cost nothing left out. */
export function haltsOf(side: CarrySide, payer: Course): Halt[] {
  return side.edges
    .filter((edge) => edge.kind === 'passing')
    .map((edge): Halt => {
      const bothWaysM = 2 * edge.detourM;
      // How much will be filled is not settled yet: all that can be.
      const mostL = Math.min(
        edge.terms?.mostL ?? Number.POSITIVE_INFINITY,
        side.course.rig[side.commodity].drawableL + side.mostCans * side.canL,
      );
      const days = (edge.waitDays ?? 0) + (edge.terms?.daysPerLitre ?? 0) * mostL;
      return { key: placeKey(edge), atM: edge.atM, bothWaysM, costM: bothWaysM + asDetourM(payer, days) };
    })
    .filter(({ costM }) => costM > 0);
}

/** Days of standing as the metres of detour that use as much. */
const asDetourM = (payer: Course, days: number): number =>
  days === 0 ? 0 : (days * standingLPerDay(payer)) / payer.off.litres;

/** Going to a supply that gives nothing, and back to the route, metres; the waiting there included. */
export const inVainM = (course: Course, edge: EdgeM): number =>
  2 * edge.detourM + asDetourM(course, edge.waitDays ?? 0);

/** All that halts cost, metres. */
export const costOf = (halts: readonly Halt[]): number => halts.reduce((sum, { costM }) => sum + costM, 0);

/**
 * Halts of the other commodity on the way from one edge to the next. One at the very place of an edge lies before it,
 * where it is not the edge's own.
 */
export const haltsBetween = (halts: readonly Halt[], from: EdgeM, to: EdgeM): Halt[] =>
  halts.filter(
    (halt) =>
      halt.atM <= to.atM &&
      (halt.atM > from.atM || (halt.atM === 0 && from.kind === 'start')) &&
      halt.key !== placeKey(from) &&
      halt.key !== placeKey(to),
  );
