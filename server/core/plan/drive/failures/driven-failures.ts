import type { Commodity } from '../../../../contract/common.ts';
import { reckon } from '../../../gaps/reckon.ts';
import { pairsOf } from '../../../lists/pairs.ts';
import { COMMODITIES } from '../../../quantity/commodities.ts';
import { kmOf } from '../../../quantity/rates.ts';
import { type FailingStop, failsWith, stopsThatMayFail } from '../../failure/failing-stops.ts';
import { backwardsL, type FailingSide, onTheWay } from '../../failure/reach.ts';
import { costOverM, haltsOf } from '../../side/halts.ts';
import { otherOf } from '../../side/other-of.ts';
import { type PlanEdge, planEdge } from '../../side/plan-edge.ts';
import { isBound, type SupplyEdge } from '../../side/supply-edge.ts';
import type { DrivenLeg } from '../drive.ts';
import type { DrivenPlan } from '../driven-plan.ts';
import { nearestAhead, type SoughtInVain } from './failure-by-other.ts';
import { leadsThrough } from './leads-through.ts';

/** Float noise, litres. */
const NOISE_L = 1e-6;

/**
 * What is done when a stop fails: to the next one that is used and does not fail with it; else to the nearest on the way
 * there that counts, or back to the one before, whichever is nearer.
 */
export interface FailureOfStop {
  readonly commodity: Commodity;
  readonly at: PlanEdge;
  readonly next: 'on' | 'back';
  readonly to: PlanEdge;
  readonly arriveL: number;
}

type PlanLegs = Pick<DrivenPlan, 'question' | 'legs'>;

/** A place of a stop that fails, and whether its reserve may be spent then. */
interface Failing {
  readonly stop: FailingStop;
  readonly place: readonly SupplyEdge[];
  readonly spendReserve: boolean;
}

/**
 * Each stop failing in turn, wherever it is passed, driven: on where both commodities bear that, else back. Throws where
 * neither is borne: a fault of the program.
 */
export function failuresOf(plan: PlanLegs, spendReserve: boolean): FailureOfStop[] {
  return stopsThatMayFail(plan.question).flatMap((stop) => {
    const failures = failuresAlong(plan, stop, spendReserve);
    if (failures !== null) return failures;
    throw new Error(`the plan against one failure fails when the stop at km ${kmOf(stop.first.atM)} fails`);
  });
}

/** Whether each stop may fail. */
export const bearsFailures = (plan: PlanLegs, spendReserve: boolean): boolean =>
  stopsThatMayFail(plan.question).every((stop) => failuresAlong(plan, stop, spendReserve) !== null);

/** One stop failing: at each of its places in turn, as far as the crew goes on; null where one leaves no way. */
function failuresAlong(plan: PlanLegs, stop: FailingStop, spendReserve: boolean): FailureOfStop[] | null {
  const failures: FailureOfStop[] = [];
  for (const place of stop.places) {
    const failing = { stop, place, spendReserve };
    const on = waysOn(plan, failing) ?? nearerOf(plan, failing);
    if (on !== null) {
      failures.push(...on);
      continue;
    }
    const back = waysBack(plan, failing);
    return back === null ? null : [...failures, ...back];
  }
  return failures;
}

/** Whether a leg comes to a place of the stop from elsewhere: coming from the stop itself the crew has found out before. */
const findsOut = ({ stop, place }: Failing, { from, to }: DrivenLeg): boolean =>
  place.includes(to) && !failsWith(stop, from);

/** What a driven commodity is held against when a stop fails. */
export function failingSide(
  { question, legs }: PlanLegs,
  commodity: Commodity,
  spendReserve: boolean,
): FailingSide {
  const side = question.sides[commodity];
  const other = question.sides[otherOf(commodity)];
  const edges = legs[other.commodity].map(({ to }) => to);
  return { side, foreign: haltsOf({ ...other, edges }, side.course), spendReserve };
}

/** What every commodity that was to be had at a place is left with, going on to the next used; null where that is not borne. */
function waysOn(plan: PlanLegs, failing: Failing): FailureOfStop[] | null {
  const ways: FailureOfStop[] = [];
  for (const { commodity, failed, side } of foundOut(plan, failing)) {
    const { leg, to } = failed;
    const on = failsWith(failing.stop, to) ? null : goOn(plan, failing)(side, leg, to);
    if (on === null) return null;
    ways.push({ commodity, at: planEdge(leg.to), next: 'on', to: planEdge(to), ...on });
  }
  return ways;
}

/** The legs that end at a place which fails, of both commodities. */
const foundOut = (plan: PlanLegs, failing: Failing): SoughtInVain[] =>
  COMMODITIES.flatMap((commodity) =>
    pairsOf(plan.legs[commodity])
      .filter(([leg]) => findsOut(failing, leg))
      .map(([leg, { to }]) => ({
        commodity,
        failed: { leg, to },
        side: failingSide(plan, commodity, failing.spendReserve),
      })),
  );

/** On by supplies that the plan passes by, where that is nearer than the way back; null otherwise. */
function nearerOf(plan: PlanLegs, failing: Failing): FailureOfStop[] | null {
  const goals = nearestAhead(plan, foundOut(plan, failing), {
    stop: failing.stop,
    goOn: goOn(plan, failing),
  });
  if (goals === null) return null;
  const on = goals.map(
    ({ commodity, failed, at, arriveL }): FailureOfStop => ({
      commodity,
      at: planEdge(failed.leg.to),
      next: 'on',
      to: planEdge(at),
      arriveL,
    }),
  );
  const back = waysBack(plan, failing);
  return on.length > 0 && (back === null || farthestM(on) <= farthestM(back)) ? on : null;
}

/** How far the farthest supply is, the way off the route to it included. */
const farthestM = (ways: readonly FailureOfStop[]): number =>
  Math.max(...ways.map(({ at, to }) => Math.abs(to.atM - at.atM) + to.detourM));

/** How a way behind a stop that failed is gone; null where too little is left, there or beyond stops that give only some. */
const goOn =
  (plan: PlanLegs, { stop }: Failing) =>
  (side: FailingSide, leg: DrivenLeg, to: SupplyEdge): Pick<FailureOfStop, 'arriveL'> | null => {
    const on = onwards(side, leg, to);
    if (on === null || !isBound(to)) return on;
    const following = plan.legs[side.side.commodity].filter(({ from }) => from.atM >= to.atM);
    return leadsThrough({ failing: side, stop }, { leg, ...on }, following) ? on : null;
  };

/** Litres on arrival at a supply, having sought in vain at the end of a leg; null where too little is left. */
export function onwards(
  { side, foreign, spendReserve }: FailingSide,
  leg: DrivenLeg,
  to: SupplyEdge,
): Pick<FailureOfStop, 'arriveL'> | null {
  const { course } = side;
  const viaM = costOverM(course, foreign, { from: leg.from, inVain: leg.to, to });
  const on = reckon(course, leg.from, to, { departL: leg.figures.departL, viaM });
  const drinking = on.grades?.drinking ?? on;
  const leftL = spendReserve
    ? Math.min(on.arriveL, drinking.arriveL)
    : Math.min(on.marginL, drinking.marginL);
  return leftL < -NOISE_L ? null : { arriveL: on.arriveL };
}

/** What every commodity that was to be had at a place is left with, going back; null where that is not borne. */
function waysBack(plan: PlanLegs, failing: Failing): FailureOfStop[] | null {
  const { place, spendReserve } = failing;
  const legsInto = (commodity: Commodity) => plan.legs[commodity].filter((leg) => findsOut(failing, leg));
  const used = COMMODITIES.flatMap((commodity) => legsInto(commodity).map(({ to }) => to));
  const ways: FailureOfStop[] = [];
  for (const commodity of COMMODITIES) {
    const side = failingSide(plan, commodity, spendReserve);
    const over = plan.legs[commodity].filter(({ to }) => !place.includes(to));
    if (over.some((leg) => used.some((there) => isCaught(side, leg, there)))) return null;
    for (const leg of legsInto(commodity)) {
      const needL = backwardsL(side, { from: leg.from, stock: leg, place: leg.to }, NOISE_L);
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
