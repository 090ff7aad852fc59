import type { RigFile } from '../../contract/rig.ts';
import { checkCrew } from '../crew/needs/check-crew.ts';
import { checkFuel } from '../fuel/engine/check-fuel.ts';
import { fuelTanksOf } from '../fuel/engine/gas.ts';
import { checkVehicle } from '../mass/check-vehicle.ts';
import type { Misfit } from '../phrases/misfits.ts';
import { filledL } from '../quantity/drawable.ts';
import { rangeInOrder } from '../quantity/range-in-order.ts';
import { checkTreatment } from '../treatment/line/check-treatment.ts';
import { checkPace } from './check-pace.ts';
import { checkPlausible } from './check-plausible.ts';

type Tank = RigFile['fuel']['tanks'][number];

/** First contradiction within a rig, null when there is none. */
export function checkRig(rig: RigFile): Misfit | null {
  return (
    rangeInOrder(rig.fuel.litresPer100Km, '/fuel/litresPer100Km') ??
    tanksDrawable(fuelTanksOf(rig.fuel), '/fuel/tanks') ??
    oneBase(rig.fuel.reserve, ['km', 'litres', 'fraction'], '/fuel/reserve') ??
    checkFuel(rig.fuel) ??
    checkCrew(rig) ??
    rangeInOrder(rig.water.litresPerDay ?? 0, '/water/litresPerDay') ??
    tanksDrawable(rig.water.tanks, '/water/tanks') ??
    oneBase(rig.water.reserve, ['days', 'litres', 'fraction'], '/water/reserve') ??
    checkPace(rig.pace) ??
    checkTreatment(rig.treatment) ??
    checkVehicle(rig) ??
    checkPlausible(rig)
  );
}

function tanksDrawable(tanks: readonly Tank[], path: string): Misfit | null {
  for (const [index, tank] of tanks.entries()) {
    const unusableL = tank.unusableLitres ?? 0;
    if (unusableL < filledL(tank)) continue;
    const { litres, fillPercent = null } = tank;
    return {
      path: `${path}/${index}/unusableLitres`,
      misfit: 'tank-undrawable',
      facts: { unusableLitres: unusableL, litres, fillPercent },
    };
  }
  return null;
}

function oneBase<K extends string>(
  reserve: Partial<Record<K, number>> | undefined,
  bases: readonly K[],
  path: string,
): Misfit | null {
  const told = bases.filter((base) => reserve?.[base] !== undefined);
  return told.length < 2 ? null : { path, misfit: 'bases-several', facts: { told, bases } };
}
