import type { Analysis } from '../contract/analysis.ts';
import type { Commodity } from '../contract/common.ts';
import type { Plan } from '../contract/plan.ts';
import type { TripFile } from '../contract/trip.ts';
import type { Gauge, WhatIf } from '../contract/whatif.ts';
import type { Reckoned } from '../core/analyse/analyse.ts';
import { type CabBasis, cabBasisOf } from '../core/cab/cab-runs.ts';
import type { Outcome } from '../core/input/problem.ts';
import { basisOf } from '../core/plan/drive/basis.ts';
import { gaugeOf } from '../core/plan/gauge/gauge-of.ts';
import type { MipSolver } from '../core/plan/model/mip.ts';
import type { SolveOptions } from '../core/plan/model/time.ts';
import { planOfOne, withoutNeeds } from '../core/plan/one-alone.ts';
import { oneFailure } from '../core/plan/one-failure.ts';
import { type CarryPlan, planCarry } from '../core/plan/plan-of.ts';
import type { PlainPlan } from '../core/plan/shown/plan.ts';
import { otherOf } from '../core/plan/side/other-of.ts';
import { waysOut } from '../core/plan/ways-out/ways-out.ts';
import { type WhatIfAsk, whatIf } from '../core/plan/what-if/what-if.ts';
import { type Calendar, reckonLoaded } from './analyse-trip.ts';
import type { RigAndTrip } from './input/plan-input.ts';
import type { LoadedTrip } from './loaded-trip.ts';
import { type PlanExtras, planToContract } from './plan-to-contract.ts';
import { analysisToContract, toContract } from './to-contract.ts';

export interface PlanTripOptions extends Calendar {
  solver: MipSolver;
  /** For one plan; changes are tried for three times as long. */
  seconds: number;
  /** Seconds that have been used since some moment; the wall's where left out. */
  clock?: () => number;
  /** Whether ways out and the plan against one failure are wanted as well. */
  extras: boolean;
  /** Whether what the cab view is reckoned from is wanted; no, where left out. */
  cab?: boolean | undefined;
  /** Told a good plan, of which nothing is proven yet, where the best takes longer than a moment. */
  onSoFar?: ((planned: PlanAndMore) => void) | undefined;
}

const wallClock = (): number => performance.now() / 1000;

/** An analysis with its carry plan, and what follows from it. */
export interface PlannedTrip extends PlanAndMore {
  analysis: Analysis;
  /** Where it was wanted. */
  cab?: CabBasis;
}

/** A carry plan and what follows from it; from the gaps where there is no plan. */
export interface PlanAndMore {
  plan: Plan;
  whatIf: WhatIf;
  gauge: Gauge;
}

/** What a trip asks of the what-ifs; metres along the route. */
function whatIfAsk({ whatIf: ask = {} }: TripFile): WhatIfAsk {
  const { waitDays, hotterByC, turnRoundAtKm } = ask;
  return {
    waitDays,
    hotterByC,
    turnRoundAtM: turnRoundAtKm === undefined ? undefined : turnRoundAtKm * 1000,
  };
}

/** The plan of one commodity alone, where there is none because nobody knows where the other is to be had; null otherwise. */
function oneAlone(
  whole: PlainPlan,
  { analysis }: Reckoned,
  reckonWithout: (unknown: Commodity) => Outcome<Reckoned>,
  options: SolveOptions,
): PlainPlan | null {
  const [unknown, ...more] = analysis.noData;
  if (whole.status !== 'none' || unknown === undefined || more.length > 0) return null;
  const reckoned = reckonWithout(unknown);
  if (!reckoned.ok) return null;
  const { plan } = planCarry(reckoned.value, options);
  return plan.status === 'found' ? planOfOne(plan, otherOf(unknown)) : null;
}

/** Analyses a loaded trip and plans what to fill where and what to carry. Blocks while it solves: for a worker. */
export function planTrip(
  loaded: LoadedTrip,
  { rig, trip }: RigAndTrip,
  { solver, seconds, clock = wallClock, extras, cab = false, onSoFar, ...calendar }: PlanTripOptions,
): Outcome<PlannedTrip> {
  const outcome = reckonLoaded(loaded, { rig, trip }, calendar);
  if (!outcome.ok) return outcome;
  const options = { solver, seconds, clock };
  const tell =
    onSoFar &&
    (({ plan, driven }: CarryPlan) => onSoFar(planAndMore(outcome.value, { plan, driven }, NO_EXTRAS)));
  const { plan: whole, driven, tooFewCans } = planCarry(outcome.value, options, tell);
  const plan =
    oneAlone(
      whole,
      outcome.value,
      (unknown) => reckonLoaded(loaded, { rig: withoutNeeds(rig, unknown), trip }, calendar),
      options,
    ) ?? whole;
  const help =
    extras && tooFewCans && plan.status !== 'out-of-time'
      ? waysOut({
          ...options,
          moreCans: plan.status === 'none',
          // A change or two may still be at work then.
          until: clock() + 3 * seconds,
          reckoned: outcome.value,
          reckon: (other) => reckonLoaded(loaded, { rig: other, trip }, calendar),
        })
      : { ways: [], complete: true };
  const failing = extras && driven !== null ? oneFailure(outcome.value, driven, options) : null;
  const found = { waysOut: help.ways, waysOutComplete: help.complete, oneFailure: failing };
  const planned = planAndMore(outcome.value, { plan, driven }, found);
  return {
    ok: true,
    value: {
      analysis: analysisToContract(outcome.value.analysis),
      ...planned,
      ...(cab ? { cab: cabBasisOf(basisOf(outcome.value, driven)) } : {}),
    },
  };
}

const NO_EXTRAS: PlanExtras = { waysOut: [], waysOutComplete: true, oneFailure: null };

function planAndMore(
  reckoned: Reckoned,
  { plan, driven }: Pick<CarryPlan, 'plan' | 'driven'>,
  extras: PlanExtras,
): PlanAndMore {
  const basis = basisOf(reckoned, driven);
  const follows = whatIf(reckoned, basis, whatIfAsk(reckoned.analysis.trip));
  return {
    plan: planToContract(plan, extras),
    whatIf: toContract(follows),
    gauge: toContract(gaugeOf(basis, follows.turnBacks)),
  };
}
