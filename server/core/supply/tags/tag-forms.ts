import type { Tags } from '../../input/sources.ts';
import { MAIN_KEYS } from './kinds.ts';
import { type KnownKey, VOCABULARY } from './vocabulary.ts';

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

/** Spellings of one meaning (common practice, no source). A list of values ("yes;no") stays as it is: it is unclear. */
const SPELLINGS: Readonly<Record<string, string>> = {
  true: 'yes',
  y: 'yes',
  '1': 'yes',
  false: 'no',
  n: 'no',
  '0': 'no',
  none: 'no',
  never: 'no',
};

/** What else values of some keys mean. */
const MEANINGS: readonly { keys: RegExp; values: readonly string[]; means: string }[] = [
  { keys: /^fuel:/, values: ['only', 'available', 'designated'], means: 'yes' },
  { keys: /^fuel:/, values: ['unavailable', 'not_available', 'out_of_stock', 'empty'], means: 'no' },
  {
    keys: /^drinking_water$/,
    values: [
      'not_potable',
      'non_potable',
      'nonpotable',
      'undrinkable',
      'unsafe',
      'contaminated',
      'poisoned',
      'bad',
    ],
    means: 'no',
  },
  { keys: /^drinking_water$/, values: ['potable', 'drinkable', 'only', 'official'], means: 'yes' },
];

/** Keys whose values are words of a list, so that case and blanks at the ends mean nothing. */
const isWordKey = (key: string): boolean =>
  Object.hasOwn(VOCABULARY, key)
    ? VOCABULARY[key as KnownKey].length > 0
    : key.startsWith('fuel:') || MAIN_KEYS.includes(key) || key === 'content' || key === 'drinkable';

function meaningOf(key: string, value: string): string {
  const word = value.trim().toLowerCase();
  const spelt = Object.hasOwn(SPELLINGS, word) ? (SPELLINGS[word] ?? word) : word;
  return MEANINGS.find(({ keys, values }) => keys.test(key) && values.includes(spelt))?.means ?? spelt;
}

/** Values as the tables write them. The same object when nothing was to change. */
function respelt(tags: Tags): Tags {
  let current: Record<string, string> | null = null;
  for (const key in tags) {
    const given = tags[key] ?? '';
    if (!isWordKey(key)) continue;
    const value = meaningOf(key, given);
    if (value === given) continue;
    current ??= { ...tags };
    current[key] = value;
  }
  return current ?? tags;
}

/** The tags in their current form; a current tag that stands beside a replaced one wins. The same object when nothing was to replace. */
export function inCurrentForm(given: Tags): Tags {
  const tags = respelt(given);
  let current: Record<string, string> | null = null;
  for (const { key, value, nowKey, nowValue } of REPLACED_TAGS) {
    const found = tags[key];
    if (found === undefined || (value !== '*' && value !== found)) continue;
    current ??= { ...tags };
    if (nowKey !== key && current[nowKey] !== undefined) continue;
    current[nowKey] = nowValue === '*' ? found : nowValue;
  }
  return current ?? tags;
}
