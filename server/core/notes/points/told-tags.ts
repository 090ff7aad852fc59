import { FuelKind } from '../../../contract/rig.ts';
import type { Tags } from '../../input/sources.ts';
import { at } from '../../lists/at.ts';
import { FUEL_RULES } from '../../supply/judge/fuels.ts';

const KINDS: readonly FuelKind[] = FuelKind.anyOf.map((one) => one.const);

/** What is sold, and what is not, as tags say it. */
export const fuelTags = (fuels: readonly FuelKind[]): Tags =>
  Object.fromEntries(
    KINDS.map((kind) => [at(FUEL_RULES[kind].keys, 0), fuels.includes(kind) ? 'yes' : 'no']),
  );
