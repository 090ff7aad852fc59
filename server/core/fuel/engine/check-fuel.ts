import type { RigFile } from '../../../contract/rig.ts';
import type { Misfit } from '../../quantity/misfit.ts';

type FuelFile = RigFile['fuel'];

/** First contradiction within what a rig tells of its fuel use; null when there is none. */
export function checkFuel(fuel: FuelFile): Misfit | null {
  return engineBurns(fuel) ?? hoursInDay(fuel) ?? cansHold(fuel);
}

/** Octane and ethanol are petrol's, biodiesel is diesel's. */
function engineBurns({ engine, kind }: FuelFile): Misfit | null {
  const rows = [
    { key: 'octane', told: engine?.octane, kinds: ['petrol', 'e85'] },
    { key: 'ethanolPercent', told: engine?.ethanolPercent, kinds: ['petrol', 'e85'] },
    { key: 'biodieselPercent', told: engine?.biodieselPercent, kinds: ['diesel'] },
  ];
  for (const { key, told, kinds } of rows) {
    if (told === undefined || kinds.includes(kind)) continue;
    return {
      path: `/fuel/engine/${key}`,
      came: `${told} for an engine that burns ${kind}`,
      expected: `a fuel of kind ${kinds.join(' or ')}`,
      remedy: `Correct /fuel/kind, or leave /fuel/engine/${key} out`,
    };
  }
  return null;
}

function hoursInDay({ hours }: FuelFile): Misfit | null {
  const idling = hours?.idlingPerDay ?? 0;
  const cooling = hours?.airConditioningPerDay ?? 0;
  if (idling + cooling <= 24) return null;
  return {
    path: '/fuel/hours',
    came: `${idling} h of idling and ${cooling} h of standing with air conditioning on in a day`,
    expected: 'not more than 24 h together',
    remedy: 'Count each hour of the engine once: idling without, or standing with air conditioning on',
  };
}

/** A filling limit that leaves less than a litre is a slip of the decimal point. */
function cansHold({ cans }: FuelFile): Misfit | null {
  if (cans?.fillPercent === undefined || cans.fillPercent >= 1) return null;
  return {
    path: '/fuel/cans/fillPercent',
    came: `${cans.fillPercent} %`,
    expected: 'percent of what the can holds, 1 to 100',
    remedy: 'Write 95 for a can that is filled to 95 %',
  };
}
