import type { Commodity } from '../../../contract/common.ts';
import { reckon } from '../../gaps/reckon.ts';
import { pairsOf } from '../../lists/pairs.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { kmOf } from '../../quantity/rates.ts';
import { type FailingStop, failingStops } from '../failure/failing-stops.ts';
import { backwardsL, type FailingSide, onTheWay } from '../failure/reach.ts';
import { costOf, haltsBetween, haltsOf, inVainM } from '../side/halts.ts';
import { otherOf } from '../side/other-of.ts';
import { type PlanEdge, planEdge } from '../side/plan-edge.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import type { DrivenLeg } from './drive.ts';
import type { DrivenPlan } from './driven-plan.ts';

/** Float noise, litres. */
const NOISE_L = 1e-6;

/** What is done when a stop fails: to the next one that is used, or back to the one before. */
export interface FailureOfStop {
  readonly commodity: Commodity;
  readonly at: PlanEdge;
  readonly next: 'on' | 'back';
  readonly to: PlanEdge;
  readonly arriveL: number;
}

type PlanLegs = Pick<DrivenPlan, 'question' | 'legs'>;

/**
 * Each stop failing in turn, driven: on where both commodities bear that, else back. Throws where neither is borne: a
 * fault of the program.
 */
export function failuresOf(plan: PlanLegs, spendReserve: boolean): FailureOfStop[] {
  return failingStops(plan.question).flatMap((stop) => {
    const ways = waysOn(plan, stop, spendReserve) ?? waysBack(plan, stop, spendReserve);
    if (ways !== null) return ways;
    throw new Error(`the plan against one failure fails when the stop at km ${kmOf(stop.first.atM)} fails`);
  });
}

/** What a driven commodity is held against when a stop fails. */
function failingSide({ question, legs }: PlanLegs, commodity: Commodity, spendReserve: boolean): FailingSide {
  const side = question.sides[commodity];
  const other = question.sides[otherOf(commodity)];
  const edges = legs[other.commodity].map(({ to }) => to);
  return { side, foreign: haltsOf({ ...other, edges }, side.course), spendReserve };
}

/** What every commodity that was to be had at a stop is left with, going on; null where that is not borne. */
function waysOn(plan: PlanLegs, stop: FailingStop, spendReserve: boolean): FailureOfStop[] | null {
  const ways: FailureOfStop[] = [];
  for (const commodity of COMMODITIES) {
    const failing = failingSide(plan, commodity, spendReserve);
    for (const [leg, { to }] of pairsOf(plan.legs[commodity])) {
      if (!stop.edges.has(leg.to)) continue;
      const arriveL = onwardL(failing, leg, to);
      if (arriveL === null) return null;
      ways.push({ commodity, at: planEdge(leg.to), next: 'on', to: planEdge(to), arriveL });
    }
  }
  return ways;
}

/** Litres on arrival at the supply behind one that gives nothing; null where what is left is too little. */
function onwardL(
  { side, foreign, spendReserve }: FailingSide,
  leg: DrivenLeg,
  to: SupplyEdge,
): number | null {
  const { course } = side;
  const viaM = inVainM(course, leg.to) + costOf(haltsBetween(foreign, leg.from, to));
  const on = reckon(course, leg.from, to, { departL: leg.figures.departL, viaM });
  const drinking = on.grades?.drinking ?? on;
  const leftL = spendReserve
    ? Math.min(on.arriveL, drinking.arriveL)
    : Math.min(on.marginL, drinking.marginL);
  return leftL < -NOISE_L ? null : on.arriveL;
}

/** What every commodity that was to be had at a stop is left with, going back; null where that is not borne. */
function waysBack(plan: PlanLegs, stop: FailingStop, spendReserve: boolean): FailureOfStop[] | null {
  const places = COMMODITIES.flatMap((commodity) => plan.legs[commodity].map(({ to }) => to)).filter((to) =>
    stop.edges.has(to),
  );
  const ways: FailureOfStop[] = [];
  for (const commodity of COMMODITIES) {
    const failing = failingSide(plan, commodity, spendReserve);
    for (const leg of plan.legs[commodity]) {
      if (!stop.edges.has(leg.to)) {
        if (places.some((place) => isCaught(failing, leg, place))) return null;
        continue;
      }
      const needL = backwardsL(failing, { from: leg.from, stock: leg, place: leg.to }, NOISE_L);
      if (needL === null) return null;
      const arriveL = leg.figures.departL - needL;
      ways.push({ commodity, at: planEdge(leg.to), next: 'back', to: planEdge(leg.from), arriveL });
    }
  }
  return ways;
}

/** Whether the other commodity was to be had at a place on a leg from where it does not bear the way back. */
const isCaught = (failing: FailingSide, leg: DrivenLeg, place: SupplyEdge): boolean =>
  leg.from.atM < place.atM &&
  leg.to.atM > place.atM &&
  backwardsL(failing, { from: leg.from, stock: leg, place: onTheWay(place) }, NOISE_L) === null;
