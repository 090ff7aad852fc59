import type { Tags } from '../../input/sources.ts';
import type { SupplyHost, SupplyKind } from '../../phrases/said/supply-kinds.ts';
import { prefixOf } from './kinds.ts';

/** Objects that often have water beside what they are for; only for names on screens. */
const KIND_AT: Readonly<Record<SupplyHost, SupplyKind>> = {
  'amenity=fuel': { phrase: 'water-at', facts: { host: 'amenity=fuel' } },
  'amenity=parking': { phrase: 'water-at', facts: { host: 'amenity=parking' } },
  'amenity=place_of_worship': { phrase: 'water-at', facts: { host: 'amenity=place_of_worship' } },
  'amenity=ranger_station': { phrase: 'water-at', facts: { host: 'amenity=ranger_station' } },
  'amenity=restaurant': { phrase: 'water-at', facts: { host: 'amenity=restaurant' } },
  'amenity=shelter': { phrase: 'water-at', facts: { host: 'amenity=shelter' } },
  'amenity=toilets': { phrase: 'water-at', facts: { host: 'amenity=toilets' } },
  'highway=rest_area': { phrase: 'water-at', facts: { host: 'highway=rest_area' } },
  'highway=services': { phrase: 'water-at', facts: { host: 'highway=services' } },
  'tourism=alpine_hut': { phrase: 'water-at', facts: { host: 'tourism=alpine_hut' } },
  'tourism=camp_pitch': { phrase: 'water-at', facts: { host: 'tourism=camp_pitch' } },
  'tourism=camp_site': { phrase: 'water-at', facts: { host: 'tourism=camp_site' } },
  'tourism=caravan_site': { phrase: 'water-at', facts: { host: 'tourism=caravan_site' } },
  'tourism=hostel': { phrase: 'water-at', facts: { host: 'tourism=hostel' } },
  'tourism=hotel': { phrase: 'water-at', facts: { host: 'tourism=hotel' } },
  'tourism=information': { phrase: 'water-at', facts: { host: 'tourism=information' } },
  'tourism=picnic_site': { phrase: 'water-at', facts: { host: 'tourism=picnic_site' } },
  'tourism=wilderness_hut': { phrase: 'water-at', facts: { host: 'tourism=wilderness_hut' } },
};

/** One value, as in the table: names are told apart by it. */
const ELSEWHERE: SupplyKind = { phrase: 'place-with-water', facts: {} };

const isHost = (tag: string): tag is SupplyHost => Object.hasOwn(KIND_AT, tag);

/** "tourism=camp_site", or null when the object is none of those. */
export function hostOf(tags: Tags): SupplyHost | null {
  for (const key of ['tourism', 'amenity', 'highway']) {
    const tag = `${key}=${tags[key]}`;
    if (isHost(tag)) return tag;
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

/** Water at a camp site; what any object with water is where it is something else. */
export function hostKind(tags: Tags): SupplyKind {
  const host = hostOf(tags);
  return host === null ? ELSEWHERE : KIND_AT[host];
}
