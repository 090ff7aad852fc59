import type { FuelUse } from '../../server/contract/fuel-use.ts';

const rangeAt = (litresPer100Km: number) => ({
  litresPer100Km,
  beforeKm: (127 / litresPer100Km) * 100,
  afterKm: (103 / litresPer100Km) * 100,
});
const RANGES = { low: rangeAt(18), typical: rangeAt(20), high: rangeAt(23.8) };

/** Fuel use as a rig that says no more than its rate gives it. */
export const SAMPLE_FUEL_USE: FuelUse = {
  model: 'even',
  range: RANGES,
  onRoute: RANGES,
  routeL: { low: 216, typical: 240, high: 285.6 },
  terms: [{ label: '1200 km along the route at 23.8 l/100 km', value: 285.6, unit: 'l' }],
  observed: { surface: 'unknown', massKg: null },
  surfaces: [
    {
      surface: 'unknown',
      km: 1200,
      allowancePercent: 0,
      tableFactor: 1.15,
      from: 'ours',
      factor: 1,
      estimate: null,
      trust: 'No estimate for what is not known',
    },
  ],
  load: null,
  climb: null,
  fuel: {
    label: 'diesel',
    densityKgPerM3: { low: 820, typical: 832, high: 845 },
    energyMJPerL: { low: 35.81, typical: 36, high: 36 },
    source: 'sample',
  },
  filling: [
    { name: 'main', litres: 130, fillPercent: 100, safePercent: 95.2, boilingPercent: 94, growsL: 3.8 },
  ],
  urea: null,
};
