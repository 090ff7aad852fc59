import type { Commodity } from '../../../../contract/common.ts';
import { type FailingStop, failsWith } from '../../failure/failing-stops.ts';
import type { FailingSide } from '../../failure/reach.ts';
import { leaving } from '../../legs/leg-need.ts';
import { arriveWith, refill } from '../../legs/stock.ts';
import { countingOf } from '../../side/carry-side.ts';
import { costOf, detoursOf, type Halt, haltsBetween, haltsOf } from '../../side/halts.ts';
import { otherOf } from '../../side/other-of.ts';
import { isBound, type SupplyEdge } from '../../side/supply-edge.ts';
import type { DrivenLeg } from '../drive.ts';
import { driveStretch } from '../drive-stretch.ts';
import type { DrivenPlan } from '../driven-plan.ts';

/** Float noise, litres. */
const NOISE_L = 1e-6;

/** A commodity that was sought in vain: the leg that ended there, and the next supply that is used. */
export interface SoughtInVain {
  readonly commodity: Commodity;
  readonly failed: { readonly leg: DrivenLeg; readonly to: SupplyEdge };
  readonly side: FailingSide;
}

/** Where it is gone on to, and with how much one comes there. */
export interface Goal extends SoughtInVain {
  readonly at: SupplyEdge;
  readonly arriveL: number;
}

interface Rule {
  readonly stop: FailingStop;
  /** How a way behind a stop that failed is gone; null where too little is left. */
  readonly goOn: (side: FailingSide, leg: DrivenLeg, to: SupplyEdge) => { readonly arriveL: number } | null;
}

type PlanLegs = Pick<DrivenPlan, 'question' | 'legs'>;

/**
 * Of each commodity sought in vain the next supply that is used, or where that is not reached the nearest before it that
 * counts, does not fail as well, is reached as the rule of failure asks and leads on to the next used with the reserve
 * kept. Null where one has none, or where a commodity does not bear the ways to what the plan passes by.
 */
export function nearestAhead(plan: PlanLegs, sought: readonly SoughtInVain[], rule: Rule): Goal[] | null {
  const goals = sought.flatMap((one) => goalOf(one, rule) ?? []);
  if (goals.length < sought.length) return null;
  return goals.every((goal) => othersBear(plan, goals, goal, rule)) ? goals : null;
}

function goalOf(sought: SoughtInVain, { stop, goOn }: Rule): Goal | null {
  const { failed, side } = sought;
  const { leg, to } = failed;
  const next = failsWith(stop, to) ? null : goOn(side, leg, to);
  if (next !== null) return { ...sought, at: to, ...next };
  // What a next supply that does not give all leaves one with hangs on what came: as planned, no less.
  if (leg.shortL > 0 || isBound(to)) return null;
  for (const at of countingOf(side.side)) {
    const isAhead = at.kind === 'passing' && at.atM > leg.to.atM && at.atM < to.atM;
    if (!isAhead || failsWith(stop, at)) continue;
    const there = goOn(side, leg, at);
    const goal = there === null ? null : { ...sought, at, ...there };
    if (goal !== null && leadsOn(goal)) return goal;
  }
  return null;
}

/** Whether the other commodity bears the way to a supply that the plan passes by: on its own new way, or as planned. */
function othersBear(plan: PlanLegs, goals: readonly Goal[], goal: Goal, { goOn }: Rule): boolean {
  const { at, failed, side } = goal;
  if (at === failed.to) return true;
  const other = otherOf(goal.commodity);
  const halts = haltsOf({ ...side.side, edges: [at] }, plan.question.sides[other].course);
  if (costOf(halts) === 0) return true;
  const own = goals.filter(({ commodity }) => commodity === other);
  if (own.length === 0) return asPlanned(plan.legs[other], at, halts);
  return own.every((one) => {
    const foreign = [...one.side.foreign, ...halts].sort((a, b) => a.atM - b.atM);
    const burdened = { ...one, side: { ...one.side, foreign } };
    const there = goOn(burdened.side, one.failed.leg, one.at);
    return there !== null && (one.at === one.failed.to || leadsOn({ ...burdened, ...there }));
  });
}

/** Whether the next supply that is used is reached from another, filled there with as many cans as before. */
function leadsOn({ side: { side, foreign }, failed: { leg, to }, at, arriveL }: Goal): boolean {
  const stock = arriveWith(side, leg, leg.figures.departL - arriveL);
  const { tankL, cans, filledL } = refill(side, at, stock, leg.cans);
  const detours = detoursOf(haltsBetween(foreign, at, to));
  const stretch = { ...leg.stretch, from: leaving(at, filledL), to, tankL, cans, detours };
  return driveStretch(stretch).marginL >= -NOISE_L;
}

/** Whether the legs of a commodity that pass a place keep the reserve with halts that were not planned. */
const asPlanned = (legs: readonly DrivenLeg[], { atM }: SupplyEdge, halts: readonly Halt[]): boolean =>
  legs
    .filter(({ from, to }) => from.atM < atM && to.atM > atM)
    .every(({ stretch }) => {
      const more = detoursOf(haltsBetween(halts, stretch.from, stretch.to));
      const detours = [...stretch.detours, ...more].sort((a, b) => a.atM - b.atM);
      return driveStretch({ ...stretch, detours }).marginL >= -NOISE_L;
    });
