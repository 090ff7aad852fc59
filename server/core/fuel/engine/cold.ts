import type { FuelKind } from '../../../contract/rig.ts';
import type { Caution } from '../../phrases/cautions.ts';

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
  const arctic = ARCTIC_CLASSES.find((row) => row.pluggingC <= coldestNightC) ?? null;
  const named = arctic === null ? null : { name: arctic.name, pluggingC: arctic.pluggingC };
  return [{ code: 'cold-diesel', facts: { nightC: coldestNightC, arctic: named } }];
}
