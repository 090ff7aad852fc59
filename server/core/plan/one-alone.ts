import type { Commodity } from '../../contract/common.ts';
import type { RigFile } from '../../contract/rig.ts';
import type { PlainPlan } from './shown/plan.ts';
import { otherOf } from './side/other-of.ts';

/** Next to nothing: what plans divide by is not zero. */
const NEXT_TO_NOTHING = { low: 0.001, typical: 0.001, high: 0.001 };
const NO_RESERVE = { litres: 0, shareOfNeed: 0 };

/** The rig as if a commodity were not used: for the other's own plan where nothing is known of this one. */
export function withoutNeeds(rig: RigFile, commodity: Commodity): RigFile {
  if (commodity === 'water') {
    const { crew: _crew, ...others } = rig;
    return { ...others, water: { ...rig.water, litresPerDay: NEXT_TO_NOTHING, reserve: NO_RESERVE } };
  }
  const { kind, tanks, cans } = rig.fuel;
  return {
    ...rig,
    fuel: {
      kind,
      tanks,
      ...(cans === undefined ? {} : { cans }),
      litresPer100Km: NEXT_TO_NOTHING,
      reserve: NO_RESERVE,
    },
  };
}

/** Such a plan with what it says of one commodity, and nothing of the other. */
export function planOfOne(plan: PlainPlan, commodity: Commodity): PlainPlan {
  const other = otherOf(commodity);
  return {
    ...plan,
    cans: { ...plan.cans, [other]: 0 },
    getCans: { ...plan.getCans, [other]: 0 },
    legs: { ...plan.legs, [other]: [] },
    levels: { ...plan.levels, [other]: [] },
    carries: plan.carries.filter((carry) => carry.commodity === commodity),
    sheet: plan.sheet.map((halt) => ({ ...halt, [other]: null })).filter((halt) => halt[commodity] !== null),
    totals:
      plan.totals === null
        ? null
        : {
            ...plan.totals,
            filled: { ...plan.totals.filled, [other]: { startL: 0, stopsL: 0, cost: null } },
          },
    masses: null,
    restsOn: [{ code: `${other}-not-planned`, facts: {} }, ...plan.restsOn],
  };
}
