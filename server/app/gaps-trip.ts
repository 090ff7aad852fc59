import type { Analysis } from '../contract/analysis.ts';
import type { Outcome } from '../core/input/problem.ts';
import { basisOf } from '../core/plan/drive/basis.ts';
import { checkList } from '../core/plan/what-if/what-if.ts';
import { type Calendar, reckonLoaded } from './analyse-trip.ts';
import type { RigAndTrip } from './input/plan-input.ts';
import type { LoadedTrip } from './loaded-trip.ts';
import { analysisToContract, toContract } from './to-contract.ts';

/** Analyses a loaded trip, with the list of what to check before leaving; every supply that counts is taken as used. */
export function gapsTrip(loaded: LoadedTrip, plan: RigAndTrip, calendar: Calendar): Outcome<Analysis> {
  const outcome = reckonLoaded(loaded, plan, calendar);
  if (!outcome.ok) return outcome;
  const callFirst = toContract(checkList(outcome.value, basisOf(outcome.value, null)));
  return { ok: true, value: { ...analysisToContract(outcome.value.analysis), callFirst } };
}
