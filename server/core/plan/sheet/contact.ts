import type { Confirmation } from '../../../contract/notes.ts';
import type { TripFile } from '../../../contract/trip.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import type { Tags } from '../../input/sources.ts';
import type { Passing } from '../../supply/points/passing.ts';

/** How a supply is asked before one depends on it, as its tags or the user say; null where they do not. */
export interface Contact {
  readonly phone: string | null;
  readonly website: string | null;
  readonly openingHours: string | null;
}

/** Keys under which mappers put it, the first that is there holds. */
const PHONE = ['phone', 'contact:phone', 'mobile', 'contact:mobile'];
const WEBSITE = ['website', 'contact:website', 'url'];

/** How a supply is asked; the telephone that the user noted goes before the one of its tags. */
export function contactOf(
  { points, analysis }: Pick<Reckoned, 'points' | 'analysis'>,
  { id, alsoIds }: Pick<Passing, 'id' | 'alsoIds'>,
): Contact {
  const tags: Tags = Object.assign({}, ...points.filter((one) => one.id === id).map((one) => one.tags));
  return {
    phone: notedPhone(analysis.trip, [id, ...alsoIds]) ?? firstOf(tags, PHONE),
    website: firstOf(tags, WEBSITE),
    openingHours: firstOf(tags, ['opening_hours']),
  };
}

/** Of the newest confirmation that has one. */
function notedPhone({ confirmations = [] }: TripFile, ids: readonly string[]): string | null {
  const newest = confirmations
    .filter(({ id, phone }) => phone !== undefined && ids.includes(id))
    .reduce<Confirmation | null>((best, one) => (best === null || one.on >= best.on ? one : best), null);
  return newest?.phone ?? null;
}

function firstOf(tags: Tags, keys: readonly string[]): string | null {
  for (const key of keys) {
    const value = tags[key]?.trim();
    if (value !== undefined && value !== '') return value;
  }
  return null;
}
