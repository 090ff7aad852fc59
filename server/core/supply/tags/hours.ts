import type { Commodity } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';

/** A text in the language of opening hours, and the tag that it comes from. */
export interface Hours {
  readonly text: string;
  readonly tag: string;
}

/** Keys of opening hours, those of the commodity itself before those of the place (OSM wiki: Key:opening_hours). */
const HOURS_KEYS: Readonly<Record<Commodity, readonly string[]>> = {
  fuel: ['opening_hours:fuel', 'opening_hours:pump', 'opening_hours'],
  water: ['opening_hours:drinking_water', 'opening_hours:water', 'opening_hours'],
};

/** Keys whose `:conditional` says when a supply may be used (OSM wiki: Conditional restrictions). */
const CONDITIONAL_KEYS = [
  'access',
  'motor_vehicle',
  'motorcar',
  'vehicle',
  'drinking_water',
  'amenity',
  'fuel',
];
const SHUT_VALUES = ['no', 'private', 'permit', 'closed', 'none'];

/** The opening hours of a commodity as mapped; null where there are none. */
export function openingOf(tags: Tags, commodity: Commodity): Hours | null {
  for (const key of HOURS_KEYS[commodity]) {
    const text = tags[key]?.trim();
    if (text !== undefined && text !== '') return { text, tag: `${key}=${text}` };
  }
  return null;
}

/** All that says when a commodity can be had: opening hours, and conditions as hours. `fuels`: the rig's own keys. */
export function hoursOf(tags: Tags, commodity: Commodity, fuels: readonly string[]): Hours[] {
  const opening = openingOf(tags, commodity);
  const ours = commodity === 'fuel' ? [...CONDITIONAL_KEYS, ...fuels] : CONDITIONAL_KEYS;
  const conditional = ours.flatMap((base) => {
    const value = tags[`${base}:conditional`];
    return value === undefined
      ? []
      : conditionsOf(value, tags[base] === undefined, `${base}:conditional=${value}`);
  });
  return [...(opening === null ? [] : [opening]), ...conditional];
}

/**
 * "no @ (Nov-Mar)" as hours: "24/7; Nov-Mar off". "yes @ (May-Sep)" without a plain value beside it: "May-Sep". What
 * stands behind the sign is hours, or words that no reader of hours makes out ("wet").
 */
function conditionsOf(value: string, isAlone: boolean, tag: string): Hours[] {
  const clauses = [...value.matchAll(/([^@;]+)@\s*(?:\(([^)]*)\)|([^;]*))/g)];
  if (clauses.length === 0) return value.trim() === '' ? [] : [{ text: value, tag }];
  return clauses.flatMap(([, word = '', inBrackets, bare = '']) => {
    const condition = (inBrackets ?? bare).trim();
    if (!SHUT_VALUES.includes(word.trim().toLowerCase())) return isAlone ? [{ text: condition, tag }] : [];
    const rules = condition.split(';').map((rule) => `${rule.trim()} off`);
    return [{ text: ['24/7', ...rules].join('; '), tag }];
  });
}

/** True where hours go by dates, so that it matters for which day they are judged. */
export const goesByDates = (text: string): boolean =>
  /\b(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec|week|easter|\d{4})\b(?!:)/i.test(
    text.replace(/"[^"]*"/g, ''),
  );

/** Hours that go by the sun, with six and eighteen o'clock in its place: in which month they hold is the same. */
export const withoutSun = (text: string): string =>
  text
    .replace(/\((sunrise|dawn)[+-]\d{1,2}:\d{2}\)|\b(sunrise|dawn)\b/gi, '06:00')
    .replace(/\((sunset|dusk)[+-]\d{1,2}:\d{2}\)|\b(sunset|dusk)\b/gi, '18:00');
