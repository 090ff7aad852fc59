import type { RigFile } from '../../contract/rig.ts';
import type { PlainPlan } from './shown/plan.ts';

/** Next to nothing: what plans divide by is not zero. */
const NO_LITRES = 0.001;

/** The rig as if nobody drank: for the fuel's own plan where nothing is known of water. */
export function withoutWaterNeeds({ crew: _crew, ...rig }: RigFile): RigFile {
  const litresPerDay = { low: NO_LITRES, typical: NO_LITRES, high: NO_LITRES };
  return { ...rig, water: { ...rig.water, litresPerDay, reserve: { litres: 0 } } };
}

/** Such a plan with what it says of fuel, and nothing of water. */
export const fuelOf = (plan: PlainPlan): PlainPlan => ({
  ...plan,
  cans: { ...plan.cans, water: 0 },
  getCans: { ...plan.getCans, water: 0 },
  legs: { ...plan.legs, water: [] },
  levels: { ...plan.levels, water: [] },
  carries: plan.carries.filter(({ commodity }) => commodity === 'fuel'),
  masses: null,
  restsOn: [{ code: 'water-not-planned', facts: {} }, ...plan.restsOn],
});
