import type { Json } from '../state/json-path.ts';
import type { QuantityKind } from '../units/conversions.ts';
import { type Choice, type Option, quantity, type SwitchItem } from './items.ts';

type Told = { [key: string]: Json };

const isGroup = (value: Json | undefined): value is Told =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** One of the ways in which a quantity can be told: its key in the file, and the figure that it begins with. */
export interface Way {
  key: string;
  words: string;
  kind: QuantityKind;
  start: number;
}

/** A quantity that stands in one of several ways (a reserve in km, litres, a share …), or in none of them. */
export function either(label: string, at: string, ways: readonly Way[], none: string): SwitchItem {
  /** What else stands in the group stays; a group that holds nothing goes. */
  const withKey = (told: Json | undefined, added: Told): Json | undefined => {
    const others = Object.entries(isGroup(told) ? told : {}).filter(
      ([key]) => !ways.some((way) => way.key === key),
    );
    const left = { ...Object.fromEntries(others), ...added };
    return Object.keys(left).length === 0 ? undefined : left;
  };
  const options = ways.map(
    ({ key, words, kind, start }): Option => ({
      value: key,
      words,
      holds: (told) => isGroup(told) && told[key] !== undefined,
      becomes: (told) => withKey(told, { [key]: start }),
      items: [quantity(words, `/${key}`, kind)],
    }),
  );
  const noneOfThem: Option = {
    value: '',
    words: none,
    holds: (told) => !options.some((option) => option.holds(told)),
    becomes: (told) => withKey(told, {}),
  };
  return { item: 'switch', label, at, options: [noneOfThem, ...options] };
}

/** A value that is one of some names, or a group of the reader's own figures; `own.start` is what these begin with. */
export const named = (
  label: string,
  at: string,
  names: readonly Choice[],
  own: { words: string; becomes: Option['becomes']; items: NonNullable<Option['items']> },
): SwitchItem => ({
  item: 'switch',
  label,
  at,
  options: [
    ...names.map(
      (name): Option => ({ ...name, holds: (told) => told === name.value, becomes: () => name.value }),
    ),
    { value: 'own', holds: isGroup, ...own },
  ],
});
