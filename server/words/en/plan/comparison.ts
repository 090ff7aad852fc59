import type { Catalogue } from '../../parts/catalogue.ts';
import { parts } from '../../parts/part.ts';

/** What makes rigs unlike to compare. */
export const COMPARISON_CAUTIONS = {
  'aboard-for-all': () =>
    parts`The litres aboard at the start are the same for every rig, however large its tanks. To compare full tanks, leave them out or tell the km and days since the last fill.`,
  'fuels-differ': ({ kinds }) =>
    parts`The rigs burn ${kinds.join(' and ')}: other stations count for each of them.`,
} satisfies Partial<Catalogue['cautions']>;
