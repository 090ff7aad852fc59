import type { Commodity } from '../../contract/common.ts';
import type { Tags } from '../sources.ts';

const LIFECYCLE = [
  'disused',
  'abandoned',
  'was',
  'removed',
  'razed',
  'demolished',
  'destroyed',
  'construction',
  'proposed',
] as const;
const KINDS = ['amenity', 'man_made', 'natural', 'waterway', 'aeroway', 'emergency', 'shop'] as const;

/** An element with none of these keys concerns no supply: readers may pass it over without looking at values. */
export const WANTED_KEYS: readonly string[] = [
  ...KINDS,
  ...LIFECYCLE.flatMap((prefix) => KINDS.map((kind) => `${prefix}:${kind}`)),
  'drinking_water',
  'drinking_water:legal',
];

/** The commodities that an object with these tags may supply, counting or not; empty when it is none of ours. */
export function wantedFor(tags: Tags): Commodity[] {
  const wanted: Commodity[] = [];
  if (tags.amenity === 'fuel') wanted.push('fuel');
  if (tags.amenity === 'drinking_water' || tags.drinking_water !== undefined) wanted.push('water');
  return wanted;
}
