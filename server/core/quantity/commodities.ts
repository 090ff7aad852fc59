import type { Commodity } from '../../contract/common.ts';

/** Both commodities, in the order in which everything is listed. */
export const COMMODITIES: readonly Commodity[] = ['fuel', 'water'];
