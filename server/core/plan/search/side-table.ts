import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import { hangsOn } from '../legs/hangs-on.ts';
import type { Hop, Leg } from '../legs/leg.ts';
import { kgPerLitre, lessAtStartL } from '../model/mass-rows.ts';
import { mostShortL } from '../model/most-short.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { stopNumbers } from '../question/stop-numbers.ts';
import { type CarrySide, edgeAt, endOf, endsOf } from '../side/carry-side.ts';
import { costOf, type Halt, haltsBetween, haltsOf, isAtHalt } from '../side/halts.ts';
import { fillingM, haltingAt } from '../side/lost-time.ts';
import { otherOf } from '../side/other-of.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import { type Cost, type HaltCost, haltingCost, inCost, NO_COST } from './cost.ts';

/** A leg of one hop with all that a search asks of it. */
export interface SearchLeg {
  /** Of the side's legs. */
  readonly number: number;
  readonly leg: Leg;
  readonly hop: Hop;
  readonly start: SupplyEdge;
  readonly end: SupplyEdge;
  /** What all halts of the other commodity on it cost, metres. */
  readonly allM: number;
  /** Without the halt at its end. */
  readonly cost: Cost;
  /** What it takes of each permitted mass with the tanks left as short as it bears, but for empty cans. */
  readonly kg: readonly number[];
}

/** One commodity as a search looks at it. Lists go by the side's edges. */
export interface SideTable {
  readonly side: CarrySide;
  readonly legs: readonly SearchLeg[];
  readonly legsFrom: readonly (readonly SearchLeg[])[];
  /** What a halt costs. */
  readonly halting: readonly HaltCost[];
  /** The stop that it is a halt at, by its number; null of start and end. */
  readonly stops: readonly (number | null)[];
  /** What a halt counts for in promises: nothing of water where fuel may be had in the same stop, which is one detour. */
  readonly leastHalting: readonly Cost[];
  /** The halts that cost the other commodity something; null where one costs nothing. */
  readonly halts: readonly (Halt | null)[];
}

/** The table of a commodity with the legs that there are; null where some go over supplies that do not give all. */
export function sideTable(
  question: CarryQuestion,
  commodity: Commodity,
  legs: readonly Leg[],
): SideTable | null {
  const { sides } = question;
  const side = sides[commodity];
  const other = sides[otherOf(commodity)];
  if (legs.some(({ hops }) => hops.length > 1)) return null;
  const foreign = haltsOf(other, side.course);
  const searchLegs = legs.map((leg, number): SearchLeg => {
    const [hop] = leg.hops;
    const [start, end] = endsOf(side, hop);
    const allM = costOf(haltsBetween(foreign, start, end));
    return {
      number,
      leg,
      hop,
      start,
      end,
      allM,
      cost: costOfLeg(side, leg),
      kg: kgOf(question, side, leg),
    };
  });
  const legsFrom: SearchLeg[][] = side.edges.map(() => []);
  for (const leg of searchLegs) at(legsFrom, leg.hop.from).push(leg);
  const halts = haltsOf(side, other.course);
  const numbers = stopNumbers(sides);
  const shared = new Set(other.edges.flatMap((edge) => numbers.get(edge) ?? []));
  const stops = side.edges.map((edge) => numbers.get(edge) ?? null);
  const halting = haltingOf(side);
  return {
    side,
    legs: searchLegs,
    legsFrom,
    halting,
    stops,
    leastHalting: halting.map((halt, index) => {
      const stop = at(stops, index);
      return commodity === 'water' && stop !== null && shared.has(stop) ? NO_COST : haltingCost(halt);
    }),
    halts: side.edges.map((edge) => halts.find((halt) => isAtHalt(edge, halt)) ?? null),
  };
}

/** Detours as long as others but for a tenth of a millimetre count as long as those: the next aim chooses between them. */
const ALIKE_M = 1e-4;

/** What a halt at each edge costs. */
function haltingOf(side: CarrySide): HaltCost[] {
  const halts = side.edges.map((edge) => haltingAt(side, edge));
  const lengths = [...new Set(halts.map(({ drivingM }) => drivingM))].sort((a, b) => a - b);
  const alike = new Map<number, number>();
  let [first, before] = [0, 0];
  for (const length of lengths) {
    if (length - before > ALIKE_M) first = length;
    before = length;
    alike.set(length, first);
  }
  return halts.map(({ drivingM, lostM }) => {
    const likeM = alike.get(drivingM) ?? 0;
    return { driving: inCost(likeM), lost: inCost(likeM + (lostM - drivingM)) };
  });
}

function costOfLeg(side: CarrySide, { hops: [hop], canM }: Leg): Cost {
  const [from, to] = endsOf(side, hop);
  // Of the places, not of the way: what two legs add up to is what one over both is.
  const way = inCost(to.atM) - inCost(from.atM);
  const evidence = hangsOn(side, hop);
  const weak = (of: typeof evidence) => (evidence === of ? way : 0);
  const lost = inCost(fillingM(side, from, hop.filledL));
  return [weak('doubtful'), weak('implied'), weak('stated'), lost, 0, inCost(canM), 1];
}

function kgOf(question: CarryQuestion, side: CarrySide, leg: Leg): number[] {
  if (question.room === null) return [];
  const { commodity } = side;
  const [hop] = leg.hops;
  const [from, to] = endsOf(side, hop);
  const lessL = lessAtStartL(side, leg, (from.atM + to.atM) / 2) + mostShortL(question, commodity, leg);
  return question.room.limits.map(
    (limit) => hop.cans * limit.canKg[commodity].filling - lessL * kgPerLitre(limit, side, leg),
  );
}

/** What a halt of the other commodity costs a leg, metres; nothing where it is not made on it. */
export const haltOnLegM = ({ start, end }: SearchLeg, halt: Halt): number =>
  costOf(haltsBetween([halt], start, end));

export const isLast = ({ side }: SideTable, { hop }: SearchLeg): boolean => hop.to === endOf(side);

/**
 * Whether places come so close that a search would lose a halt: two of one commodity at the very same metre, and one of
 * the other there as well.
 */
export function hasKnots(side: CarrySide, other: CarrySide): boolean {
  const places = other.edges.filter(({ kind }) => kind === 'passing').map(({ atM }) => atM);
  return side.edges.some((edge, index) => {
    const before = index === 0 ? edge : edgeAt(side, index - 1);
    return (
      index > 0 &&
      edge.kind === 'passing' &&
      before.kind === 'passing' &&
      before.atM === edge.atM &&
      places.includes(edge.atM)
    );
  });
}
