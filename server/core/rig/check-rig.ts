import type { RigFile } from '../../contract/rig.ts';
import { checkCrew } from '../crew/needs/check-crew.ts';
import { checkFuel } from '../fuel/engine/check-fuel.ts';
import { checkVehicle } from '../mass/check-vehicle.ts';
import { filledL } from '../quantity/drawable.ts';
import type { Misfit } from '../quantity/misfit.ts';
import { checkTreatment } from '../treatment/line/check-treatment.ts';
import { checkPace } from './check-pace.ts';

type UseRange = RigFile['fuel']['litresPer100Km'];
type Tank = RigFile['fuel']['tanks'][number];

/** First contradiction within a rig, null when there is none. */
export function checkRig(rig: RigFile): Misfit | null {
  return (
    rangeInOrder(rig.fuel.litresPer100Km, '/fuel/litresPer100Km') ??
    tanksDrawable(rig.fuel.tanks, '/fuel/tanks') ??
    oneBase(rig.fuel.reserve, ['km', 'litres', 'fraction'], '/fuel/reserve') ??
    checkFuel(rig.fuel) ??
    checkCrew(rig) ??
    rangeInOrder(rig.water.litresPerDay ?? 0, '/water/litresPerDay') ??
    tanksDrawable(rig.water.tanks, '/water/tanks') ??
    oneBase(rig.water.reserve, ['days', 'litres', 'fraction'], '/water/reserve') ??
    paceInOrder(rig.pace.kmPerHour) ??
    checkPace(rig.pace) ??
    checkTreatment(rig.treatment) ??
    checkVehicle(rig)
  );
}

function rangeInOrder(use: UseRange, path: string): Misfit | null {
  if (typeof use === 'number' || (use.low <= use.typical && use.typical <= use.high)) return null;
  return {
    path,
    came: `low ${use.low}, typical ${use.typical}, high ${use.high}`,
    expected: 'low <= typical <= high',
    remedy: `Put the three numbers of ${path} in order`,
  };
}

function paceInOrder(pace: RigFile['pace']['kmPerHour']): Misfit | null {
  if (typeof pace === 'number' || (pace.slow <= pace.typical && pace.typical <= pace.fast)) return null;
  const path = '/pace/kmPerHour';
  return {
    path,
    came: `slow ${pace.slow}, typical ${pace.typical}, fast ${pace.fast}`,
    expected: 'slow <= typical <= fast',
    remedy: `Put the three numbers of ${path} in order`,
  };
}

function tanksDrawable(tanks: readonly Tank[], path: string): Misfit | null {
  for (const [index, tank] of tanks.entries()) {
    const unusableL = tank.unusableLitres ?? 0;
    if (unusableL < filledL(tank)) continue;
    const filled = tank.fillPercent === undefined ? '' : ` filled to ${tank.fillPercent} %`;
    return {
      path: `${path}/${index}/unusableLitres`,
      came: `${unusableL} l that cannot be used in a tank of ${tank.litres} l${filled}`,
      expected: 'less than the tank holds',
      remedy: 'Give the litres that stay in the tank when the pump draws air, or leave the key out',
    };
  }
  return null;
}

function oneBase<K extends string>(
  reserve: Partial<Record<K, number>> | undefined,
  bases: readonly K[],
  path: string,
): Misfit | null {
  const given = bases.filter((base) => reserve?.[base] !== undefined);
  if (given.length < 2) return null;
  return {
    path,
    came: given.join(' and '),
    expected: `one of ${bases.join(', ')} (shareOfNeed may stand beside it)`,
    remedy: `Keep one of ${given.join(' and ')}`,
  };
}
