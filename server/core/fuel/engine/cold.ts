import type { Caution } from '../../../contract/common.ts';
import type { FuelKind } from '../../../contract/rig.ts';

/**
 * Arctic classes of diesel, EN 590, Table 3 (check-values F2): cold filter plugging point °C (from memory), cloud point
 * °C, and bounds of density at 15 °C, kg/m³.
 */
export const ARCTIC_CLASSES = [
  { name: '0', pluggingC: -20, cloudC: -10, densityKgPerM3: { low: 800, high: 845 } },
  { name: '1', pluggingC: -26, cloudC: -16, densityKgPerM3: { low: 800, high: 845 } },
  { name: '2', pluggingC: -32, cloudC: -22, densityKgPerM3: { low: 800, high: 840 } },
  { name: '3', pluggingC: -38, cloudC: -28, densityKgPerM3: { low: 800, high: 840 } },
  { name: '4', pluggingC: -44, cloudC: -34, densityKgPerM3: { low: 800, high: 840 } },
] as const;

/** Below this, diesel sold for warm weather may clog the filter, °C (from memory: summer grades plug from 5 to 0). */
const SUMMER_C = 0;

/** What to know about diesel and cold nights; none for other fuels, or where the coldest night was not told. */
export function coldCautions(kind: FuelKind, coldestNightC: number | null): Caution[] {
  if (kind !== 'diesel' || coldestNightC === null || coldestNightC >= SUMMER_C) return [];
  const arctic = ARCTIC_CLASSES.find((row) => row.pluggingC <= coldestNightC);
  const asked =
    arctic === undefined
      ? 'No class of EN 590 is made for that'
      : `Arctic class ${arctic.name} of EN 590 stays fluid to ${arctic.pluggingC} °C (from memory)`;
  const text = `Diesel bought where it is warm may clog the filter at ${coldestNightC} °C. ${asked}: ask for winter diesel, and fill it before the cold.`;
  return [{ code: 'cold-diesel', text }];
}
