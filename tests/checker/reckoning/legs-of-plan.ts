import type { Commodity } from '../../../server/contract/common.ts';
import type { Plan, PlanLeg } from '../../../server/contract/plan.ts';
import type { Facts } from './facts.ts';
import { type End, type Halt, isSame, type Leg } from './leg.ts';

export const COMMODITIES = ['fuel', 'water'] as const satisfies Commodity[];

/** The legs of a plan, by commodity. */
type Legs = Plan['legs'];

const otherOf = (commodity: Commodity): Commodity => (commodity === 'fuel' ? 'water' : 'fuel');

/** A stop for both commodities is one halt; one at the very end of a way lies before it. */
export function haltsBetween(
  facts: Facts,
  legs: Legs,
  commodity: Commodity,
  way: { from: End; to: End },
): Halt[] {
  const other = otherOf(commodity);
  return legs[other]
    .map(({ to }) => to)
    .filter(({ kind, atKm }) => kind === 'passing' && atKm > way.from.atKm && atKm <= way.to.atKm)
    .filter((halt) => !isSame(halt, way.from) && !isSame(halt, way.to))
    .map(({ id, atKm, detourKm }) => ({ atKm, detourKm, waitHours: facts.termsOf(other, id).waitHours }));
}

/** Each leg of a plan as it is begun: what is filled in is what is aboard less what came. */
export function legsOfPlan(facts: Facts, plan: Pick<Plan, 'legs' | 'restsOn'>, commodity: Commodity): Leg[] {
  const sleepsAt = plan.restsOn
    .filter(({ code }) => code === 'plan-night-at-supply')
    .map(({ fromKm }) => fromKm);
  return plan.legs[commodity].map(({ from, to, departL, cans }, index): Leg => {
    const came: PlanLeg | undefined = plan.legs[commodity][index - 1];
    return {
      commodity,
      from,
      to,
      departL,
      cans,
      filledL: came === undefined ? 0 : Math.max(0, departL - Math.max(0, came.arriveL)),
      sleepsFirst: commodity === 'water' && from.kind === 'passing' && sleepsAt.includes(from.atKm),
      halts: haltsBetween(facts, plan.legs, commodity, { from, to }),
    };
  });
}
