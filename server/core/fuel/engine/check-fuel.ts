import type { RigFile } from '../../../contract/rig.ts';
import type { Misfit } from '../../phrases/misfits.ts';

type FuelFile = RigFile['fuel'];

/** First contradiction within what a rig tells of its fuel use; null when there is none. */
export function checkFuel(fuel: FuelFile): Misfit | null {
  return engineBurns(fuel) ?? ureaOnce(fuel) ?? hoursInDay(fuel) ?? cansHold(fuel);
}

/** Octane and ethanol are petrol's, biodiesel is diesel's. */
function engineBurns({ engine, kind }: FuelFile): Misfit | null {
  const rows = [
    { key: 'octane', value: engine?.octane, kinds: ['petrol', 'e85'] },
    { key: 'ethanolPercent', value: engine?.ethanolPercent, kinds: ['petrol', 'e85'] },
    { key: 'biodieselPercent', value: engine?.biodieselPercent, kinds: ['diesel'] },
  ];
  for (const { key, value, kinds } of rows) {
    if (value === undefined || kinds.includes(kind)) continue;
    return { path: `/fuel/engine/${key}`, misfit: 'engine-fuel', facts: { value, kind, kinds } };
  }
  return null;
}

/** By the way or by the fuel, and a reserve that the tank holds. */
function ureaOnce({ urea }: FuelFile): Misfit | null {
  if (urea === undefined) return null;
  const bases = ['litresPer1000Km', 'percentOfFuel'] as const;
  const told = bases.filter((base) => urea[base] !== undefined);
  const path = '/fuel/urea';
  if (told.length === 2) return { path, misfit: 'bases-several', facts: { told, bases } };
  if (told.length === 0) return { path, misfit: 'urea-untold', facts: {} };
  const { reserveLitres = 0, tankLitres } = urea;
  if (reserveLitres < tankLitres) return null;
  return {
    path: '/fuel/urea/reserveLitres',
    misfit: 'tank-undrawable',
    facts: { unusableLitres: reserveLitres, litres: tankLitres, fillPercent: null },
  };
}

function hoursInDay({ hours }: FuelFile): Misfit | null {
  const idling = hours?.idlingPerDay ?? 0;
  const airConditioning = hours?.airConditioningPerDay ?? 0;
  if (idling + airConditioning <= 24) return null;
  return { path: '/fuel/hours', misfit: 'engine-hours', facts: { idling, airConditioning } };
}

/** A filling limit that leaves less than a litre is a slip of the decimal point. */
function cansHold({ cans }: FuelFile): Misfit | null {
  const fillPercent = cans?.fillPercent;
  if (fillPercent === undefined || fillPercent >= 1) return null;
  return { path: '/fuel/cans/fillPercent', misfit: 'can-filling', facts: { fillPercent } };
}
