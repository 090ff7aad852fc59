import type { Tags } from '../../input/sources.ts';
import { prefixOf } from './kinds.ts';

/** Objects that often have water beside what they are for, in plain words; only for names on screens. */
const HOST_LABELS: Readonly<Record<string, string>> = {
  'amenity=fuel': 'fuel station',
  'amenity=parking': 'car park',
  'amenity=place_of_worship': 'place of worship',
  'amenity=ranger_station': 'ranger station',
  'amenity=restaurant': 'restaurant',
  'amenity=shelter': 'shelter',
  'amenity=toilets': 'toilets',
  'highway=rest_area': 'rest area',
  'highway=services': 'service area',
  'tourism=alpine_hut': 'mountain hut',
  'tourism=camp_pitch': 'camp pitch',
  'tourism=camp_site': 'camp site',
  'tourism=caravan_site': 'caravan site',
  'tourism=hostel': 'hostel',
  'tourism=hotel': 'hotel',
  'tourism=information': 'information point',
  'tourism=picnic_site': 'picnic site',
  'tourism=wilderness_hut': 'wilderness hut',
};

/** "tourism=camp_site", or null when the object is none of those. */
export function hostOf(tags: Tags): string | null {
  for (const key of ['tourism', 'amenity', 'highway']) {
    const tag = `${key}=${tags[key]}`;
    if (HOST_LABELS[tag] !== undefined) return tag;
  }
  return null;
}

/** Keys that can make an object with water beside it what it is. */
const HOST_KEYS = [
  'tourism',
  'amenity',
  'highway',
  'shop',
  'leisure',
  'man_made',
  'natural',
  'building',
  'craft',
  'office',
];

/**
 * The tags that name the object's host as out of use ("disused:tourism=camp_site"): all there is of it, where no
 * host of today stands beside them.
 */
export function formerHosts(tags: Tags): string[] {
  if (hostOf(tags) !== null) return [];
  return Object.keys(tags)
    .filter((key) => {
      const [prefix, bare] = prefixOf(key);
      return prefix !== null && HOST_KEYS.includes(bare) && tags[key] !== 'no' && tags[bare] === undefined;
    })
    .map((key) => `${key}=${tags[key]}`);
}

/** "water at a camp site"; plain words where the object is something else. */
export function hostLabel(tags: Tags): string {
  const host = hostOf(tags);
  return host === null ? 'place with water' : `water at: ${HOST_LABELS[host]}`;
}
