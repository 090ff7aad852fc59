import type { FuelKind } from '../../../contract/rig.ts';
import type { NoFacts } from '../said/said.ts';

/** What makes rigs unlike to compare. */
export interface ComparisonCautions {
  'aboard-for-all': NoFacts;
  'fuels-differ': { kinds: readonly FuelKind[] };
}
