import type { Commodity } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import { LIFECYCLE_PREFIXES, MAIN_KEYS, WATER_KEYS } from './kinds.ts';
import { matchKinds } from './match-kinds.ts';

/** An element with none of these keys concerns no supply: readers may pass it over without looking at values. */
export const WANTED_KEYS: readonly string[] = [
  ...MAIN_KEYS,
  ...LIFECYCLE_PREFIXES.flatMap((prefix) => MAIN_KEYS.map((key) => `${prefix}:${key}`)),
  ...WATER_KEYS,
];

/** The commodities that an object with these tags may supply, counting or not; empty when it is none of ours. */
export function wantedFor(tags: Tags): Commodity[] {
  return matchKinds(tags).map((match) => match.rule.commodity);
}
