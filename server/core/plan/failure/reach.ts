import type { Edge } from '../../gaps/course/course.ts';
import { drinkingShare } from '../../gaps/gap-grades.ts';
import { returnNeedL } from '../../gaps/need.ts';
import { canBeDrivenBack } from '../../gaps/turn-back.ts';
import { at } from '../../lists/at.ts';
import { SLACK } from '../../quantity/slack.ts';
import { bearableL, litresOf } from '../legs/bearable.ts';
import { type HopInTurn, hopsInTurn } from '../legs/hops-in-turn.ts';
import type { Hop } from '../legs/leg.ts';
import { alongL, leaving } from '../legs/leg-need.ts';
import type { Stock } from '../legs/stock.ts';
import { type CarrySide, edgeAt } from '../side/carry-side.ts';
import { costOf, costOverM, detoursBack, type Halt, haltsBetween } from '../side/halts.ts';

/** What a side is held against when a stop fails. */
export interface FailingSide {
  readonly side: CarrySide;
  /** Halts of the other commodity. */
  readonly foreign: readonly Halt[];
  readonly spendReserve: boolean;
}

/** Litres of all water, or of fuel, that may be used until the next supply when a stop has failed. */
function bearableOnFailureL({ side, spendReserve }: FailingSide, stock: Stock, atM: number): number {
  if (!spendReserve) return bearableL(side, stock, atM);
  const { allL, drinkableL } = litresOf(side, stock);
  const share = drinkingShare(side.course.rig);
  return drinkableL === null || share === 0 ? allL : Math.min(allL, drinkableL / share);
}

/**
 * Whether a hop's end can be gone to in vain and the end of the hops that follow still be reached, what is had on the
 * way included and every halt of the other commodity made.
 */
export function reachesOn(failing: FailingSide, hop: Hop, following: readonly Hop[]): boolean {
  const { side } = failing;
  const [next, ...rest] = following;
  if (next === undefined) return true;
  // What goes on the route alone is more than is aboard: told at once, which is asked of very many.
  if (alongL(side, { from: hop.from, to: next.to }) > litresOf(side, hop).allL + 1) return false;
  if (rest.length === 0 && !needHangsOnFilling(side, hop)) {
    const needL = knownNeed(failing, hop, next.to);
    return needL <= bearableOnFailureL(failing, hop, edgeAt(side, next.to).atM) + SLACK;
  }
  for (const { index, departure, needL } of hopsOver(failing, hop, following)) {
    const { atM } = edgeAt(side, at(following, index).to);
    if (needL > bearableOnFailureL(failing, departure, atM) + SLACK) return false;
  }
  return true;
}

/** The hops that follow, the first from where the one before began by way of its end. */
function hopsOver({ side, foreign }: FailingSide, hop: Hop, following: readonly Hop[]): Iterable<HopInTurn> {
  const hops = following.map((each, number) => (number === 0 ? { ...each, from: hop.from } : each));
  const inVain = edgeAt(side, hop.to);
  const viaM = (from: number, to: number) => {
    const way = { from: edgeAt(side, from), to: edgeAt(side, to) };
    return from === hop.from
      ? costOverM(side.course, foreign, { ...way, inVain })
      : costOf(haltsBetween(foreign, way.from, way.to));
  };
  return hopsInTurn(side, hop, hops, viaM);
}

/** Whether what a way needs hangs on how much is filled where it begins, which takes time there. */
const needHangsOnFilling = (side: CarrySide, { from }: Hop): boolean =>
  (edgeAt(side, from).terms?.daysPerLitre ?? 0) !== 0;

/** Needs that are the same whatever is aboard. Every leg asks for them with each number of cans: those known already. */
interface KnownNeeds {
  readonly foreign: readonly Halt[];
  /** On, by the indexes of where a way begins, of what gives nothing, and of its end. */
  readonly on: Map<number, number>;
  /** To a place and back, by the index of where a way begins; null where it cannot be driven back. */
  readonly back: Map<Edge, number | null>[];
}

const knownNeeds = new WeakMap<CarrySide, KnownNeeds>();

function needsOf({ side, foreign }: FailingSide): KnownNeeds {
  const before = knownNeeds.get(side);
  if (before?.foreign === foreign) return before;
  const needs = { foreign, on: new Map(), back: [] };
  knownNeeds.set(side, needs);
  return needs;
}

function knownNeed(failing: FailingSide, hop: Hop, to: number): number {
  const { on } = needsOf(failing);
  const count = failing.side.edges.length;
  const key = (hop.from * count + hop.to) * count + to;
  const before = on.get(key);
  if (before !== undefined) return before;
  const [only] = hopsOver(failing, hop, [{ ...hop, to }]);
  const needL = only?.needL ?? Number.POSITIVE_INFINITY;
  on.set(key, needL);
  return needL;
}

/**
 * Whether a place of a hop can be gone to and the hop's beginning be regained, every halt of the other commodity on the
 * way made: its end, where that gives nothing, or a place on the way where the other commodity was sought in vain.
 */
export function reachesBack(failing: FailingSide, hop: Hop, place: Edge): boolean {
  const { side } = failing;
  const from = leaving(edgeAt(side, hop.from), hop.filledL);
  if (needHangsOnFilling(side, hop)) return backwardsL(failing, { from, stock: hop, place }, SLACK) !== null;
  const { back } = needsOf(failing);
  const ofStart = back[hop.from] ?? new Map<Edge, number | null>();
  back[hop.from] = ofStart;
  const before = ofStart.get(place);
  const needL = before === undefined ? backNeedL(failing, { from, place }) : before;
  ofStart.set(place, needL);
  return needL !== null && needL <= bearableOnFailureL(failing, hop, from.atM) + SLACK;
}

/** A way that is gone to a place and back. */
interface WayBack {
  /** As it was left. */
  readonly from: Edge;
  readonly stock: Stock;
  readonly place: Edge;
}

/**
 * Litres to a place and back to where a way begins, every halt of the other commodity on the way out made; null where
 * the way cannot be driven back, or takes more than may be used, by more than `slackL`.
 */
export function backwardsL(failing: FailingSide, way: WayBack, slackL: number): number | null {
  const needL = backNeedL(failing, way);
  if (needL === null) return null;
  return needL <= bearableOnFailureL(failing, way.stock, way.from.atM) + slackL ? needL : null;
}

/** Litres above the reserve on going to a place and back, by the same rule; null where the way cannot be driven back. */
export function backMarginL(failing: FailingSide, way: WayBack): number | null {
  const { course } = failing.side;
  const needL = backNeedL(failing, way);
  if (needL === null) return null;
  const { shareOfNeed } = course.rig[course.commodity].reserve;
  return (bearableOnFailureL(failing, way.stock, way.from.atM) - needL) * (1 + shareOfNeed);
}

function backNeedL(
  { side, foreign }: FailingSide,
  { from, place }: Pick<WayBack, 'from' | 'place'>,
): number | null {
  if (!canBeDrivenBack(side.course, from, place)) return null;
  return returnNeedL(side.course, from, place, detoursBack(haltsBetween(foreign, from, place)));
}

/** The place of a supply of the other commodity on the way of this one; the way to it is a halt's. */
export function onTheWay(supply: Edge): Edge {
  const { id, name, atM } = supply;
  const place =
    onWays.get(supply) ??
    ({ kind: 'passing', id: `${id} on the way`, name, atM, detourM: 0, evidence: null } as const);
  onWays.set(supply, place);
  return place;
}

/** Each place once: by it is told what is known of the way to it. */
const onWays = new WeakMap<Edge, Edge>();
