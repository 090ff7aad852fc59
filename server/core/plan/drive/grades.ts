import { aboardOf } from '../../crew/needs/graded-store.ts';
import { drinkingShare } from '../../gaps/gap-grades.ts';
import type { Rig } from '../../rig/rig.ts';

/** Water aboard by what it is for, litres: what may be drunk, and what is kept for washing. They add up to all. */
export interface GradeLevel {
  drinkableL: number;
  washingL: number;
}

/**
 * Both grades after so many litres of all water were used since leaving with `tankL` in the tanks and `cansL` in cans.
 * Washing draws what is kept for it first. Null where no crew tells the grades.
 */
export function gradesAfter(
  rig: Rig,
  facts: { tankL: number; cansL: number; cansDrinkable: boolean },
  usedL: number,
): GradeLevel | null {
  const store = rig.water.grades;
  if (store === null) return null;
  const aboard = aboardOf(store, facts.tankL);
  const keptL = aboard.washingL + (facts.cansDrinkable ? 0 : facts.cansL);
  const drinkableL = aboard.drinkingL + aboard.anyL + (facts.cansDrinkable ? facts.cansL : 0);
  const washedL = usedL * (1 - drinkingShare(rig));
  const fromKeptL = Math.min(keptL, washedL);
  return { drinkableL: drinkableL - (usedL - fromKeptL), washingL: keptL - fromKeptL };
}
