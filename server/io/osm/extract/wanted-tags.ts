import type { Commodity } from '../../../contract/common.ts';
import type { Tags } from '../../../core/input/sources.ts';
import { WANTED_KEYS, wantedFor } from '../../../core/supply/tags/wanted.ts';

const wantedKeys: ReadonlySet<string> = new Set(WANTED_KEYS);
const NONE: readonly Commodity[] = [];

/** The commodities that an object with these tags may supply; passes over most objects without looking at values. */
export function commoditiesOf(tags: Tags): readonly Commodity[] {
  for (const key in tags) if (wantedKeys.has(key)) return wantedFor(tags);
  return NONE;
}
