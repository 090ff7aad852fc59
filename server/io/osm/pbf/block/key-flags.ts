import { WANTED_KEYS } from '../../../../core/supply/tags/wanted.ts';
import { ROAD_ACROSS_KEYS, SURROUNDING_RULES } from '../../../../core/surroundings/kinds.ts';
import { OTHER_KEYS } from '../../extract/whole-file/content-census.ts';

/** Marks of a string in a block's table. */
export const WANTED_KEY = 1;
/** The key of roads. */
export const ROAD_KEY = 2;
/** Keys that make a way one of the map's ground. */
export const GROUND_WAY_KEY = 4;
/** The key of places: also what makes a node one of the map's ground. */
export const PLACE_KEY = 8;
/** Keys of what a general map holds besides. */
export const OTHER_KEY = 16;
/** A key, or a value, that may make a way or relation ground that bears on supplies. */
export const SURROUNDING_MARK = 32;
/** Keys by whose value it is one. */
export const SURROUNDING_KEY = 64;
/** The key of level crossings. */
export const CROSSING_KEY = 128;

const KEY_FLAGS = new Map<string, number>();
const mark = (text: string, flag: number) => KEY_FLAGS.set(text, (KEY_FLAGS.get(text) ?? 0) | flag);
for (const key of WANTED_KEYS) mark(key, WANTED_KEY);
mark('highway', ROAD_KEY);
for (const key of OTHER_KEYS) mark(key, OTHER_KEY);
for (const key of ['highway', 'natural']) mark(key, GROUND_WAY_KEY);
mark('place', PLACE_KEY);
mark('railway', CROSSING_KEY);
/** Its values are read in every spelling, since a closed gate must not be missed: the key alone decides. */
const BY_KEY_ALONE: readonly string[] = ['access'];
/** A value as mappers write it. */
const spellings = (value: string): string[] => [
  value,
  value.charAt(0).toUpperCase() + value.slice(1),
  value.toUpperCase(),
];
for (const { what, key, values } of SURROUNDING_RULES) {
  if (what === 'road-across') continue;
  if (values === 'any' || BY_KEY_ALONE.includes(key)) mark(key, SURROUNDING_MARK);
  else {
    mark(key, SURROUNDING_KEY);
    for (const value of values.flatMap(spellings)) mark(value, SURROUNDING_MARK);
  }
}
for (const key of ROAD_ACROSS_KEYS) mark(key, SURROUNDING_MARK);

interface Known {
  bytes: Uint8Array;
  flag: number;
}

const LONGEST = Math.max(...[...KEY_FLAGS.keys()].map((key) => Buffer.byteLength(key)));

/** By length × 256 + first byte, so that most strings are passed over after one look. */
const BUCKETS: (Known[] | undefined)[] = [];
for (const [key, flag] of KEY_FLAGS) {
  const bytes = new Uint8Array(Buffer.from(key, 'utf8'));
  const place = bytes.length * 256 + (bytes[0] ?? 0);
  const bucket = BUCKETS[place] ?? [];
  bucket.push({ bytes, flag });
  BUCKETS[place] = bucket;
}
for (let place = 0; place < (LONGEST + 1) * 256; place += 1) BUCKETS[place] ??= undefined;

/** The marks of the string at `start` to `end`; 0 for most. */
export function keyFlagOf(bytes: Uint8Array, start: number, end: number): number {
  const length = end - start;
  if (length === 0 || length > LONGEST) return 0;
  const bucket = BUCKETS[length * 256 + (bytes[start] ?? 0)];
  if (bucket === undefined) return 0;
  for (const known of bucket) {
    let same = 1;
    while (same < length && known.bytes[same] === bytes[start + same]) same += 1;
    if (same === length) return known.flag;
  }
  return 0;
}
