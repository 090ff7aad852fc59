import type { Tags } from '../../input/sources.ts';
import type { SupplyPoint } from '../../supply/points/supply-point.ts';

/** How a supply is asked before one depends on it, as its tags say; null where they do not. */
export interface Contact {
  readonly phone: string | null;
  readonly website: string | null;
  readonly openingHours: string | null;
}

/** Keys under which mappers put it, the first that is there holds. */
const PHONE = ['phone', 'contact:phone', 'mobile', 'contact:mobile'];
const WEBSITE = ['website', 'contact:website', 'url'];

/** What the tags of a supply say of how to ask it. */
export function contactOf(points: readonly SupplyPoint[], id: string): Contact {
  const tags: Tags = Object.assign({}, ...points.filter((one) => one.id === id).map((one) => one.tags));
  return {
    phone: firstOf(tags, PHONE),
    website: firstOf(tags, WEBSITE),
    openingHours: firstOf(tags, ['opening_hours']),
  };
}

function firstOf(tags: Tags, keys: readonly string[]): string | null {
  for (const key of keys) {
    const value = tags[key]?.trim();
    if (value !== undefined && value !== '') return value;
  }
  return null;
}
