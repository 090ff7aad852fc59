import type { Commodity } from '../../contract/common.ts';
import type { Reckoned } from '../analyse/analyse.ts';
import type { Caution } from '../phrases/cautions.ts';
import { COMMODITIES } from '../quantity/commodities.ts';
import type { DrivenPlan } from './drive/driven-plan.ts';
import { driveToppedUp } from './drive/failures/topped-up.ts';
import { massesAlong } from './drive/masses.ts';
import type { Choice } from './model/choice.ts';
import { type SolveOptions, type Timer, timerOf } from './model/time.ts';
import { mostCansOf } from './question/can-limits.ts';
import { type PutQuestion, questionOf } from './question/question-of.ts';
import { sheetOf } from './sheet/sheet-of.ts';
import { totalsOf } from './sheet/totals-of.ts';
import { cansToGet, cansToGetCautions } from './shown/cans-to-get.ts';
import type { PlainPlan } from './shown/plan.ts';
import { planCarries, planLegs, planLevels } from './shown/plan-legs.ts';
import { planStops } from './shown/plan-stops.ts';
import { restsOn, waysLeftOut } from './shown/rests-on.ts';
import { byCommodity } from './side/other-of.ts';
import { canBeDone } from './solve/can-be-done.ts';
import { solveCarry } from './solve/solve.ts';
import { allowing, fewestMoreCans } from './ways-out/fewest-cans.ts';
import { breaksOf, massBreakOf, type PlanBreak } from './ways-out/plan-break.ts';

export interface CarryPlan {
  readonly plan: PlainPlan;
  /** Null where there is no plan. */
  readonly driven: DrivenPlan | null;
  /** With the cans there are there is no plan: one that was found has more, which are to be got. */
  readonly tooFewCans: boolean;
}

/**
 * The carry plan of an analysed trip: chosen with the heaviest masses, driven with those of the plan, and shown only
 * when that keeps every reserve and every permitted mass. It has the cans that are owned, or as many as the trip's limit
 * says; where those are too few, and no limit is set, the fewest more that make a plan. Where that takes longer than a
 * moment a good plan is told meanwhile.
 */
export function planCarry(
  reckoned: Reckoned,
  options: SolveOptions,
  onSoFar?: (plan: CarryPlan) => void,
): CarryPlan {
  const timer = timerOf(options);
  const put = questionOf(reckoned);
  const tell = onSoFar && ((choice: Choice) => onSoFar(foundPlan(reckoned, put, choice, false)));
  const solution = solveCarry(put.question, options, tell);
  switch (solution.status) {
    case 'found':
      return foundPlan(reckoned, put, solution.choice, false);
    case 'out-of-time':
      return outOfTime(reckoned, put, false);
    case 'none':
      return (
        planWithMoreCans(reckoned, put, { timer, onSoFar }) ??
        withoutPlan(reckoned, put, timer, solution.complete)
      );
  }
}

/** Commodities for which the trip sets no limit of cans: more of them could be got. */
const openOf = ({ analysis }: Reckoned): Commodity[] =>
  COMMODITIES.filter((commodity) => analysis.trip.plan?.mostCans?.[commodity] === undefined);

/** The plan with the fewest cans more, where some could be got; null where there is none. */
function planWithMoreCans(
  reckoned: Reckoned,
  put: PutQuestion,
  { timer, onSoFar }: { timer: Timer; onSoFar: ((plan: CarryPlan) => void) | undefined },
): CarryPlan | null {
  const open = openOf(reckoned);
  if (open.length === 0) return null;
  const fewest = fewestMoreCans({ reckoned, open, anyMass: false }, timer.rest());
  if (fewest.status === 'out-of-time') return outOfTime(reckoned, put, true);
  if (fewest.status === 'none') return null;
  const more = questionOf(allowing(reckoned, fewest.mostCans));
  const tell = onSoFar && ((choice: Choice) => onSoFar(foundPlan(reckoned, more, choice, true)));
  const solution = solveCarry(more.question, timer.rest(), tell);
  if (solution.status === 'found') {
    const { choice } = solution;
    const aims = choice.aims.map((aim) => ({ ...aim, proven: aim.proven && fewest.proven }));
    return foundPlan(reckoned, more, { ...choice, aims }, true);
  }
  return solution.status === 'none' ? null : outOfTime(reckoned, put, true);
}

/** Why there is none. */
function withoutPlan(reckoned: Reckoned, put: PutQuestion, timer: Timer, complete: boolean): CarryPlan {
  const { question, cautions } = put;
  const breaks = breaksOf(question, () => canBeDone({ ...question, room: null }, timer.rest()));
  const plan = noPlan(reckoned, { ...put, cautions: [...cautions, ...waysLeftOut(complete, question)] });
  const massBreak = isTooHeavy(reckoned, put, breaks, timer) ? [massBreakOf(question)] : [];
  return { plan: { ...plan, breaks: [...breaks, ...massBreak] }, driven: null, tooFewCans: true };
}

/** Where cans could be got, and still there is no plan, whether the masses are why. */
function isTooHeavy(
  reckoned: Reckoned,
  { question }: PutQuestion,
  breaks: readonly PlanBreak[],
  timer: Timer,
): boolean {
  const open = openOf(reckoned);
  if (open.length === 0 || question.room === null) return false;
  if (breaks.some(({ cause }) => cause === 'mass')) return false;
  return fewestMoreCans({ reckoned, open, anyMass: true }, timer.rest()).status === 'found';
}

const outOfTime = (reckoned: Reckoned, put: PutQuestion, tooFewCans: boolean): CarryPlan => ({
  plan: { ...noPlan(reckoned, put), status: 'out-of-time' },
  driven: null,
  tooFewCans,
});

/** Cautions of the analysis that bear on a plan. */
const BEARING: readonly Caution['code'][] = [
  'mass-incomplete',
  'mass-limit-unknown',
  'start-assumed-full',
  'onward-unknown',
  'bridge',
  'sparse-steps',
  'age-unknown',
  'route-closed',
];

/** Nothing but what it would rest on. */
function noPlan({ analysis }: Reckoned, { question, cautions }: PutQuestion): PlainPlan {
  return {
    status: 'none',
    aims: [],
    cans: { fuel: 0, water: 0 },
    mostCans: mostCansOf(question),
    getCans: { fuel: 0, water: 0 },
    sheet: [],
    totals: null,
    stops: [],
    legs: { fuel: [], water: [] },
    carries: [],
    levels: { fuel: [], water: [] },
    masses: null,
    restsOn: [...analysis.cautions.filter(({ code }) => BEARING.includes(code)), ...cautions],
    breaks: [],
  };
}

function foundPlan(reckoned: Reckoned, put: PutQuestion, choice: Choice, tooFewCans: boolean): CarryPlan {
  const { rig, trip, passings } = reckoned.analysis;
  const driven = driveToppedUp({ reckoned, question: put.question, spendReserve: null }, choice);
  const { legs } = driven;
  const { sides } = driven.question;
  const getCans = cansToGet(rig, choice.cans);
  const sheet = sheetOf(reckoned, driven);
  const empty = noPlan(reckoned, { ...put, question: driven.question });
  const plan: PlainPlan = {
    ...empty,
    status: 'found',
    aims: choice.aims,
    cans: choice.cans,
    getCans,
    sheet,
    totals: totalsOf(reckoned, driven, sheet),
    stops: planStops(passings, { asks: trip.plan?.stops ?? [], sides, legs }),
    legs: planLegs(driven),
    carries: planCarries(sides, legs),
    levels: byCommodity((commodity) => planLevels(rig, sides[commodity], legs[commodity])),
    masses: massesAlong(rig, choice.cans, legs)?.levels ?? null,
    restsOn: [...empty.restsOn, ...cansToGetCautions(rig, getCans), ...restsOn(driven)],
  };
  return { plan, driven, tooFewCans };
}
