import type { Commodity } from '../../contract/common.ts';
import type { Reckoned } from '../analyse/analyse.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { Phrase } from '../phrases/phrases.ts';
import type { DrivenPlan } from './drive/driven-plan.ts';
import { type FailureOfStop, failuresOf } from './drive/failures/driven-failures.ts';
import { driveToppedUp } from './drive/failures/topped-up.ts';
import { type FailingStop, stopsThatMayFail } from './failure/failing-stops.ts';
import { type SolveOptions, timerOf } from './model/time.ts';
import { fullCansKg } from './question/can-kg.ts';
import { type Cans, mostCansOf } from './question/can-limits.ts';
import type { CarryQuestion, FailureRule } from './question/carry-question.ts';
import { questionOf } from './question/question-of.ts';
import type { SheetHalt } from './sheet/sheet-halt.ts';
import { sheetOf } from './sheet/sheet-of.ts';
import { offRouteM, type PlanTotals, totalsOf } from './sheet/totals-of.ts';
import type { PlanCarry, PlanLeg } from './shown/plan-leg.ts';
import { planCarries, planLegs } from './shown/plan-legs.ts';
import { nightsAtSupplies } from './shown/rests-on.ts';
import { byCommodity } from './side/other-of.ts';
import { type PlanEdge, planEdge } from './side/plan-edge.ts';
import { canBeDone } from './solve/can-be-done.ts';
import { solveCarry } from './solve/solve.ts';

/** So many cans beyond those there may be are tried for each commodity (ours). */
const MORE_CANS = 6;

/** A plan that still arrives when any one stop turns out dry or shut. */
export interface OneFailure {
  readonly status: 'found' | 'none' | 'out-of-time';
  readonly spendsReserve: boolean;
  readonly cans: Cans;
  /** Beyond the plain plan. */
  readonly moreCans: Cans;
  readonly moreKg: number;
  readonly moreDrivingM: number;
  readonly proven: boolean;
  /** The whole plan, halt by halt, where there is one. */
  readonly sheet: readonly SheetHalt[];
  readonly totals: PlanTotals | null;
  readonly carries: readonly PlanCarry[];
  readonly legs: Readonly<Record<Commodity, readonly PlanLeg[]>>;
  /** Waters at which the night has to be spent although filling ends before. */
  readonly nights: readonly Caution[];
  /** Where there is none: the stops whose failing nothing bears, as far as the time was enough to look for them. */
  readonly breaks: readonly FailureBreak[];
  readonly failures: readonly FailureOfStop[];
}

export interface FailureBreak {
  readonly at: PlanEdge;
  readonly text: Phrase;
}

/**
 * The plan that still arrives when any one of its stops turns out dry or shut: on to the next stop it uses, or back to the
 * one before. With the cans there may be, else with more.
 */
export function oneFailure(reckoned: Reckoned, plain: DrivenPlan, options: SolveOptions): OneFailure {
  const spendReserve = reckoned.analysis.trip.plan?.spendReserveOnFailure ?? false;
  const rule: FailureRule = { spendReserve };
  const most = mostCansOf(plain.question);
  const withMore = (more: number): CarryQuestion =>
    questionOf(reckoned, { mostCans: { fuel: most.fuel + more, water: most.water + more }, failing: true })
      .question;
  const none: OneFailure = { ...NO_PLAN, spendsReserve: spendReserve };
  for (const more of [0, MORE_CANS]) {
    const question = withMore(more);
    const solution = solveCarry({ ...question, oneFailure: rule }, options);
    if (solution.status === 'out-of-time') return { ...none, status: 'out-of-time', proven: false };
    if (solution.status === 'none') continue;
    const safe = driveToppedUp({ reckoned, question, spendReserve }, solution.choice);
    return { ...none, ...safePlan(reckoned, plain, safe), failures: failuresOf(safe, spendReserve) };
  }
  return { ...none, breaks: unbearable(withMore(MORE_CANS), rule, options) };
}

const NO_PLAN: Omit<OneFailure, 'spendsReserve'> = {
  status: 'none',
  cans: { fuel: 0, water: 0 },
  moreCans: { fuel: 0, water: 0 },
  moreKg: 0,
  moreDrivingM: 0,
  proven: true,
  sheet: [],
  totals: null,
  carries: [],
  legs: { fuel: [], water: [] },
  nights: [],
  breaks: [],
  failures: [],
};

/** The plan, and what it costs beside the plain one. */
function safePlan(reckoned: Reckoned, plain: DrivenPlan, safe: DrivenPlan) {
  const { cans, aims } = safe.choice;
  const sheet = sheetOf(reckoned, safe);
  const totals = totalsOf(reckoned, safe, sheet);
  const moreCans = byCommodity((commodity) => cans[commodity] - plain.choice.cans[commodity]);
  return {
    status: 'found',
    cans,
    moreCans,
    moreKg: fullCansKg(reckoned.analysis.rig, moreCans),
    moreDrivingM: totals.drivingM - offRouteM(plain.legs),
    proven: aims.every(({ proven }) => proven),
    sheet,
    totals,
    carries: planCarries(safe.question.sides, safe.legs),
    legs: planLegs(safe),
    nights: nightsAtSupplies(safe),
  } as const;
}

/** Stops whose failing no plan bears, each asked for by itself; none where each one could be borne, but not all. */
function unbearable(question: CarryQuestion, rule: FailureRule, options: SolveOptions): FailureBreak[] {
  const timer = timerOf(options);
  return stopsThatMayFail(question).flatMap((stop, onlyStop) => {
    if (timer.leftS() <= 0) return [];
    const alone = { ...question, oneFailure: { ...rule, onlyStop } };
    return canBeDone(alone, timer.rest()) === false ? [failureBreak(stop)] : [];
  });
}

function failureBreak({ first, places }: FailingStop): FailureBreak {
  const names = [...new Set(places.flat().map(({ name, id }) => name ?? id))];
  const facts = { names, atM: first.atM };
  return { at: planEdge(first), text: { phrase: 'plans-hang-on', facts } };
}
