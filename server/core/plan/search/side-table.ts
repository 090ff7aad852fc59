import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import { hangsOn } from '../legs/hangs-on.ts';
import type { Hop, Leg } from '../legs/leg.ts';
import { kgPerLitre, lessAtStartL } from '../model/mass-rows.ts';
import { mostShortL } from '../model/most-short.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { type CarrySide, edgeAt, endOf, endsOf } from '../side/carry-side.ts';
import { costOf, type Halt, haltsBetween, haltsOf, isAtHalt } from '../side/halts.ts';
import { otherOf } from '../side/other-of.ts';
import { isSamePlace, type SupplyEdge } from '../side/supply-edge.ts';
import { type Cost, inCost } from './cost.ts';

/** A leg of one hop with all that a search asks of it. */
export interface SearchLeg {
  /** Of the side's legs. */
  readonly number: number;
  readonly leg: Leg;
  readonly hop: Hop;
  readonly start: SupplyEdge;
  readonly end: SupplyEdge;
  /** Metres of halts of the other commodity that it bears; endless where it bears all that there are on it. */
  readonly spareM: number;
  /** Without the driving to its end. */
  readonly cost: Cost;
  /** What it takes of each permitted mass with the tanks left as short as it bears. */
  readonly kg: readonly number[];
}

/** One commodity as a search looks at it. Lists go by the side's edges. */
export interface SideTable {
  readonly side: CarrySide;
  readonly legs: readonly SearchLeg[];
  readonly legsFrom: readonly (readonly SearchLeg[])[];
  /** The driving of a halt. */
  readonly driving: readonly Cost[];
  /** The same, nothing where the other commodity of the search is at the same place: no more than both cost together. */
  readonly leastDriving: readonly Cost[];
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
    const spareM = allM <= hop.spareM ? Number.POSITIVE_INFINITY : hop.spareM;
    return {
      number,
      leg,
      hop,
      start,
      end,
      spareM,
      cost: costOfLeg(side, leg),
      kg: kgOf(question, side, leg),
    };
  });
  const legsFrom: SearchLeg[][] = side.edges.map(() => []);
  for (const leg of searchLegs) at(legsFrom, leg.hop.from).push(leg);
  const halts = haltsOf(side, other.course);
  const driving = drivingTo(side.edges);
  return {
    side,
    legs: searchLegs,
    legsFrom,
    driving,
    leastDriving: side.edges.map((edge, index) =>
      commodity === 'water' && sharesPlace(other, edge) ? drivingOf(0) : at(driving, index),
    ),
    halts: side.edges.map((edge) => halts.find((halt) => isAtHalt(edge, halt)) ?? null),
  };
}

const sharesPlace = ({ edges }: CarrySide, edge: SupplyEdge): boolean =>
  edges.some((other) => other.kind === 'passing' && isSamePlace(other, edge));

const drivingOf = (metres: number): Cost => [0, 0, 0, inCost(metres), 0, 0];

/** Detours as long as others but for a tenth of a millimetre count as long as those: the next aim chooses between them. */
const ALIKE_M = 1e-4;

/** The driving to each edge, both ways. */
function drivingTo(edges: readonly SupplyEdge[]): Cost[] {
  const lengths = [...new Set(edges.map(bothWaysM))].sort((a, b) => a - b);
  const alike = new Map<number, number>();
  let [first, before] = [0, 0];
  for (const length of lengths) {
    if (length - before > ALIKE_M) first = length;
    before = length;
    alike.set(length, first);
  }
  return edges.map((edge) => drivingOf(alike.get(bothWaysM(edge)) ?? 0));
}

const bothWaysM = ({ kind, detourM }: SupplyEdge): number => (kind === 'passing' ? 2 * detourM : 0);

function costOfLeg(side: CarrySide, { hops: [hop], canM }: Leg): Cost {
  const [from, to] = endsOf(side, hop);
  // Of the places, not of the way: what two legs add up to is what one over both is.
  const way = inCost(to.atM) - inCost(from.atM);
  const evidence = hangsOn(side, hop);
  const weak = (of: typeof evidence) => (evidence === of ? way : 0);
  return [weak('doubtful'), weak('implied'), weak('stated'), 0, inCost(canM), 1];
}

function kgOf(question: CarryQuestion, side: CarrySide, leg: Leg): number[] {
  if (question.room === null) return [];
  const { commodity } = side;
  const [hop] = leg.hops;
  const [from, to] = endsOf(side, hop);
  const lessL = lessAtStartL(side, leg, (from.atM + to.atM) / 2) + mostShortL(question, commodity, leg);
  return question.room.limits.map(
    (limit) => hop.cans * limit.canKg[commodity].filling - lessL * kgPerLitre(limit, commodity),
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
