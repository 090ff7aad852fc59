import type { WaterUse } from '../../server/contract/crew.ts';

/** Water use of the sample rig, which tells litres a day for all aboard. */
export const SAMPLE_WATER_USE: WaterUse = {
  from: 'rate',
  litresPerDay: { low: 11, typical: 14, high: 18 },
  uses: [],
  notCarriedLitresPerDay: { low: 0, typical: 0, high: 0 },
  grades: null,
  aboardL: 70,
  enduranceDays: { low: 70 / 11, typical: 5, high: 70 / 18 },
  heat: null,
  inHeat: [],
  reserve: {
    litres: 16,
    days: 16 / 18,
    hoursToHelp: null,
    safeL: 0,
    worstLoss: 'the tank "floor"',
    holds: false,
  },
  treatAt: null,
  mixing: [],
  treatText: 'No treatment line: only water stated fit to drink is filled in.',
  cautions: [],
  working: [{ label: 'your own figure for all aboard', value: 18, unit: 'l a day' }],
};
