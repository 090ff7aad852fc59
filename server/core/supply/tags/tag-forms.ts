import type { Tags } from '../../input/sources.ts';

/**
 * Tags that OSM has replaced, still met in the data: key and value, what stands for them now (id-tagging-schema,
 * deprecated.json). A "*" stands for any value, which is kept.
 */
export const REPLACED_TAGS: readonly { key: string; value: string; nowKey: string; nowValue: string }[] = [
  { key: 'drinkable', value: '*', nowKey: 'drinking_water', nowValue: '*' },
  { key: 'access', value: 'customer', nowKey: 'access', nowValue: 'customers' },
  { key: 'access', value: 'public', nowKey: 'access', nowValue: 'yes' },
  { key: 'pump', value: 'hand_pump', nowKey: 'pump', nowValue: 'manual' },
  { key: 'pump', value: 'electrical_pump', nowKey: 'pump', nowValue: 'powered' },
  { key: 'pump', value: 'power', nowKey: 'pump', nowValue: 'powered' },
  { key: 'pump', value: 'no_pump', nowKey: 'pump', nowValue: 'no' },
];

/** The tags in their current form; a current tag that stands beside a replaced one wins. The same object when nothing was to replace. */
export function inCurrentForm(tags: Tags): Tags {
  let current: Record<string, string> | null = null;
  for (const { key, value, nowKey, nowValue } of REPLACED_TAGS) {
    const given = tags[key];
    if (given === undefined || (value !== '*' && value !== given)) continue;
    current ??= { ...tags };
    if (nowKey !== key && current[nowKey] !== undefined) continue;
    current[nowKey] = nowValue === '*' ? given : nowValue;
  }
  return current ?? tags;
}
