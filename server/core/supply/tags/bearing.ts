import type { Tags } from '../../input/sources.ts';
import type { ChangedTag } from '../../phrases/notes.ts';
import { KIND_RULES, prefixOf, WATER_KEYS } from './kinds.ts';
import { isDeciding } from './vocabulary.ts';

/** Keys that make an object a supply of some kind. */
const KIND_KEYS: ReadonlySet<string> = new Set([
  ...KIND_RULES.flatMap(({ forms }) => forms.flatMap((form) => Object.keys(form))),
  ...WATER_KEYS,
]);

/** Whether a key bears on what supply an object is, or on whether it counts. */
const isBearing = (key: string): boolean => isDeciding(key) || KIND_KEYS.has(prefixOf(key)[1]);

/** The tags of an object by which it is a supply and counts or not: what a note keeps of it. */
export const bearingTags = (tags: Tags): Tags =>
  Object.fromEntries(Object.entries(tags).filter(([key]) => isBearing(key)));

/** The tags that bear on a supply and differ, in the order of their keys. */
export function changedTags(before: Tags, now: Tags): ChangedTag[] {
  const keys = new Set([...Object.keys(bearingTags(before)), ...Object.keys(bearingTags(now))]);
  return [...keys]
    .sort()
    .filter((key) => before[key] !== now[key])
    .map((key) => ({ key, before: before[key] ?? null, now: now[key] ?? null }));
}
