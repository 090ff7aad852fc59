import type { Plan, PlanAim } from '../contract/plan.ts';
import type { Aim } from '../core/plan/model/aims.ts';
import type { AimReached } from '../core/plan/model/choice.ts';
import type { OneFailure } from '../core/plan/one-failure.ts';
import type { PlainPlan } from '../core/plan/shown/plan.ts';
import type { WayOut } from '../core/plan/ways-out/way-out.ts';
import { toContract } from './to-contract.ts';

const M_PER_KM = 1000;

/** Aims of core that are metres of way, and cans that are carried over metres, as answers have them: in kilometres. */
const AIMS: Record<Aim, { aim: PlanAim['aim']; per: number }> = {
  'doubtful-m': { aim: 'doubtful-km', per: M_PER_KM },
  'implied-m': { aim: 'implied-km', per: M_PER_KM },
  'stated-m': { aim: 'stated-km', per: M_PER_KM },
  'cans-to-get': { aim: 'cans-to-get', per: 1 },
  'lost-h': { aim: 'lost-h', per: 1 },
  'driving-m': { aim: 'driving-km', per: M_PER_KM },
  'can-m': { aim: 'can-km', per: M_PER_KM },
  'least-margin-m': { aim: 'least-margin-km', per: M_PER_KM },
  'short-fill-l': { aim: 'short-fill-l', per: 1 },
};

/** An aim as answers have it. */
export function aimToContract({ aim, value, proven, gap }: AimReached): PlanAim {
  const { aim: name, per } = AIMS[aim];
  return { aim: name, value: value / per, proven, gap: gap / per };
}

/** A plan without ways out and failures as answers have it. */
export const plainPlanToContract = ({ aims, ...plan }: PlainPlan) => ({
  ...toContract(plan),
  aims: aims.map(aimToContract),
});

/** What follows from a plan, or from there being none. */
export interface PlanExtras {
  readonly waysOut: readonly WayOut[];
  readonly waysOutComplete: boolean;
  readonly oneFailure: OneFailure | null;
}

export const planToContract = (plan: PlainPlan, extras: PlanExtras): Plan => ({
  ...plainPlanToContract(plan),
  ...toContract(extras),
});
