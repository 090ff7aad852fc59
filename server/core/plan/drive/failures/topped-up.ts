import type { Commodity } from '../../../../contract/common.ts';
import type { Reckoned } from '../../../analyse/analyse.ts';
import { hoursOfStanding } from '../../../gaps/course/standing.ts';
import { pairsOf } from '../../../lists/pairs.ts';
import { COMMODITIES } from '../../../quantity/commodities.ts';
import { hopWith, legOver } from '../../legs/direct-legs.ts';
import { fullDeparture } from '../../legs/stock.ts';
import type { Choice, PlannedLeg } from '../../model/choice.ts';
import type { CarryQuestion } from '../../question/carry-question.ts';
import { stopNumbers } from '../../question/stop-numbers.ts';
import { type CarrySide, edgeAt, endsOf } from '../../side/carry-side.ts';
import { haltingAt } from '../../side/lost-time.ts';
import { otherOf } from '../../side/other-of.ts';
import { fillDays, isBound, isSamePlace, type SupplyEdge } from '../../side/supply-edge.ts';
import { type DrivenPlan, driveActual, driveKeeping } from '../driven-plan.ts';
import { bearsFailures, failingSide, onwards } from './driven-failures.ts';

/** Filling up where one halts anyway takes no longer than this, hours (ours). */
const MOST_FILL_HOURS = 0.5;

/** A supply where one halts for the other commodity anyway, by its index. */
interface TopUp {
  readonly commodity: Commodity;
  readonly at: number;
}

/** What a plan is driven with. */
interface TopUpFacts {
  readonly reckoned: Reckoned;
  readonly question: CarryQuestion;
  /** Null where no stop has to be able to fail. */
  readonly spendReserve: boolean | null;
}

/**
 * Drives a choice as driveActual, and at every halt fills up the other commodity as well where it is to be had in the same
 * stop: without waiting, slow filling, more cans or a longer detour. Where a reserve, a permitted mass or a failure would
 * not hold then, it is passed by. The plan hangs on no such filling: without it the way before it leads to the next supply.
 */
export function driveToppedUp(facts: TopUpFacts, choice: Choice): DrivenPlan {
  const { reckoned, question } = facts;
  const plain = driveActual(reckoned, question, choice);
  const topUps = topUpsOf(question, choice);
  if (topUps.length === 0) return plain;
  const all = topUps.reduce((before, topUp) => withTopUp(question, before, topUp), choice);
  return holding(facts, all) ?? topUps.reduce((plan, topUp) => withOneMore(facts, plan, topUp), plain);
}

function withOneMore(facts: TopUpFacts, plan: DrivenPlan, topUp: TopUp): DrivenPlan {
  return holding(facts, withTopUp(facts.question, plan.choice, topUp)) ?? plan;
}

/** A choice driven; null where it does not hold, or hangs on what is filled up. */
function holding({ reckoned, question, spendReserve }: TopUpFacts, choice: Choice): DrivenPlan | null {
  const plan = driveKeeping(reckoned, question, choice);
  if (plan === null || !holdsWithout(plan)) return null;
  return spendReserve === null || bearsFailures(plan, spendReserve) ? plan : null;
}

/** Whether each supply that is only filled up at may give nothing: the next is reached all the same, with the reserve. */
const holdsWithout = (plan: DrivenPlan): boolean =>
  COMMODITIES.every((commodity) => {
    const side = failingSide(plan, commodity, false);
    return pairsOf(plan.legs[commodity]).every(
      ([leg, { to }]) => !leg.endsAtTopUp || onwards(side, leg, to) !== null,
    );
  });

/** In route order. */
function topUpsOf(question: CarryQuestion, choice: Choice): TopUp[] {
  return COMMODITIES.flatMap((commodity) => {
    const own = stopsOf(question, choice, commodity);
    const stops = [...stopsOf(question, choice, otherOf(commodity))].filter(([stop]) => !own.has(stop));
    return stops.flatMap(([stop, halts]) => topUpAt(question, commodity, { stop, halts }));
  });
}

/** The supply stops at which a choice halts for a commodity, with the supplies there. */
function stopsOf(
  { sides }: CarryQuestion,
  { legs }: Choice,
  commodity: Commodity,
): Map<number, SupplyEdge[]> {
  const numbers = stopNumbers(sides);
  const stops = new Map<number, SupplyEdge[]>();
  for (const { to } of legs[commodity].flatMap(({ hops }) => hops)) {
    const edge = edgeAt(sides[commodity], to);
    const stop = numbers.get(edge);
    if (stop !== undefined) stops.set(stop, [...(stops.get(stop) ?? []), edge]);
  }
  return stops;
}

interface HaltsAtStop {
  readonly stop: number;
  readonly halts: readonly SupplyEdge[];
}

/** Of the supplies at a stop the one that is halted at anyway, else the nearest to the route. */
function topUpAt({ sides }: CarryQuestion, commodity: Commodity, { stop, halts }: HaltsAtStop): TopUp[] {
  const side = sides[commodity];
  const other = sides[otherOf(commodity)];
  const numbers = stopNumbers(sides);
  const drivenM = halts.reduce((sum, halt) => sum + haltingAt(other, halt).drivingM, 0);
  const isThere = (edge: SupplyEdge) => halts.some((halt) => isSamePlace(halt, edge));
  const [best] = [...side.edges.entries()]
    .filter(([, edge]) => numbers.get(edge) === stop && isFilledAtOnce(side, edge))
    .filter(([, edge]) => haltingAt(side, edge).drivingM <= drivenM)
    .sort(([, a], [, b]) => Number(isThere(b)) - Number(isThere(a)) || a.detourM - b.detourM);
  return best === undefined ? [] : [{ commodity, at: best[0] }];
}

function isFilledAtOnce(side: CarrySide, edge: SupplyEdge): boolean {
  if (isBound(edge) || (edge.waitDays ?? 0) > 0) return false;
  const { filledL } = fullDeparture(side, 1, side.mostCans);
  return hoursOfStanding(fillDays(edge, filledL)) <= MOST_FILL_HOURS;
}

/** The choice with the leg that passes a supply parted there: left as full as the leg began. */
function withTopUp({ sides }: CarryQuestion, choice: Choice, { commodity, at }: TopUp): Choice {
  const side = sides[commodity];
  const legs = choice.legs[commodity].flatMap((leg): PlannedLeg[] => {
    const [hop] = leg.hops;
    const [from, to] = endsOf(side, leg);
    const { atM } = edgeAt(side, at);
    if (leg.hops.length > 1 || from.atM >= atM || to.atM <= atM) return [leg];
    const after = fullDeparture(side, at, hop.cans);
    return [
      {
        ...legOver(side, [hopWith(side, { from: leg.from, to: at }, hop)]),
        shortL: leg.shortL,
        endsAtTopUp: true,
      },
      {
        ...leg,
        ...legOver(side, [hopWith(side, { from: at, to: leg.to }, after)]),
        shortL: Math.min(leg.shortL, after.tankL),
      },
    ];
  });
  return { ...choice, legs: { ...choice.legs, [commodity]: legs } };
}
