import deprecated from '@openstreetmap/id-tagging-schema/dist/deprecated.json' with { type: 'json' };
import fields from '@openstreetmap/id-tagging-schema/dist/fields.json' with { type: 'json' };
import presets from '@openstreetmap/id-tagging-schema/dist/presets.json' with { type: 'json' };
import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../server/core/input/sources.ts';
import { FUEL_RULES, NOT_A_FUEL } from '../../../server/core/supply/judge/fuels.ts';
import { KIND_RULES, LIFECYCLE_PREFIXES, WATER_KEYS } from '../../../server/core/supply/tags/kinds.ts';
import { REPLACED_TAGS } from '../../../server/core/supply/tags/tag-forms.ts';
import { VOCABULARY } from '../../../server/core/supply/tags/vocabulary.ts';

interface Field {
  key?: string;
  keys?: string[];
  type: string;
  options?: string[];
}
interface Replacement {
  old: Record<string, string>;
  replace?: Record<string, string>;
}
const FIELDS = Object.values(fields as unknown as Record<string, Field>);
const PRESETS = Object.values(presets as unknown as Record<string, { tags: Record<string, string> }>);
const DEPRECATED = deprecated as unknown as Replacement[];

/** Keys and tags that the tagging schema 6.19.2 does not hold, each with the reason why it is used all the same. */
const EXCEPTIONS: Readonly<Record<string, string>> = {
  'drinking_water:legal': 'no field in the package; used with springs and fountains (check values, O5)',
  'drinking_water=untreated': 'the field is a check box; the value is in the rules (O4)',
  'drinking_water=conditional': 'as before (O4)',
  'drinking_water=seasonal': 'as before (O4)',
  'seasonal=spring': 'the field is a check box; season words are common use (O11)',
  'seasonal=summer': 'as before (O11)',
  'seasonal=autumn': 'as before (O11)',
  'seasonal=winter': 'as before (O11)',
  'aeroway=fuel': 'no preset; named as the fuel of aircraft (O1)',
  'emergency=water_tank': 'presets name it only together with a tank, a reservoir or a pond (O7)',
  'natural=waterhole': 'no preset; in the rules',
  'man_made=spring_box': 'no preset; a man-made catch of a spring (O8)',
  hgv: 'no field of its own; named for fuel stations (O1)',
  operational_status: 'no field; from memory',
  'pump:status': 'no field; from memory',
  'fuel:HVO': 'not in the list of fuels; used by mappers',
  'fuel:HVO100': 'as before',
  ...Object.fromEntries(
    [
      'kerosene',
      'diesel_hgv',
      'truck_diesel',
      'b20',
      'b30',
      'b100',
      'diesel_b30',
      'diesel_b100',
      'untaxed_diesel',
      'taxfree_diesel',
      'red_diesel',
      'diesel_red',
      'def',
      'urea',
      'discount',
      'others',
    ].map((name) => [
      `fuel:${name}`,
      'a name that mappers use beside the listed ones (Key:fuel:*, from memory)',
    ]),
  ),
  'fuel:petrol': 'not in the list of fuels; used by mappers',
  'fuel:gasoline': 'as before',
};

const DISCOURAGED_PREFIXES = LIFECYCLE_PREFIXES.filter((prefix) => prefix !== 'disused');

const fieldsOf = (key: string): Field[] =>
  FIELDS.filter((field) => field.key === key || field.keys?.includes(key) === true);

const fuelsInSchema = new Set(
  FIELDS.filter((field) => field.key === 'fuel:').flatMap((field) => field.options ?? []),
);

const fits = (old: Record<string, string>, tags: Tags): boolean =>
  Object.entries(old).every(
    ([key, value]) => tags[key] === value || (value === '*' && tags[key] !== undefined),
  );

/** What is wrong with a tag by the schema; null when nothing is. `value` is null for free text. */
function complaint(key: string, value: string | null): string | null {
  if (EXCEPTIONS[key] !== undefined || EXCEPTIONS[`${key}=${value}`] !== undefined) return null;
  const replaced = DEPRECATED.find(({ old }) => fits(old, { [key]: value ?? 'anything' }));
  if (replaced !== undefined) return `${key}=${value} is replaced by ${JSON.stringify(replaced.replace)}`;
  if (key.startsWith('fuel:')) return fuelsInSchema.has(key.slice(5)) ? null : `${key} is no known fuel`;
  const known = fieldsOf(key);
  if (known.length === 0) return `${key} is no known key`;
  if (value === null) return null;
  const checks = known.some((field) => field.type === 'check');
  const options = new Set(known.flatMap((field) => field.options ?? []));
  const open = known.some((field) => field.type === 'access' || field.type === 'combo');
  if (checks && (value === 'yes' || value === 'no')) return null;
  if (open && options.has(value)) return null;
  return `${key} has no value ${value}`;
}

/** What is wrong with the tags of a kind: they must be those of a preset, with nothing in them that was replaced. */
function kindComplaint(tags: Tags): string | null {
  const asText = Object.entries(tags).map(([key, value]) => `${key}=${value}`);
  if (asText.some((tag) => EXCEPTIONS[tag] !== undefined)) return null;
  const replaced = DEPRECATED.find(({ old }) => fits(old, tags));
  if (replaced !== undefined)
    return `${asText.join(', ')} is replaced by ${JSON.stringify(replaced.replace)}`;
  const isPreset = PRESETS.some(
    (preset) =>
      Object.keys(preset.tags).length === asText.length &&
      Object.entries(preset.tags).every(([key, value]) => tags[key] === value),
  );
  if (isPreset) return null;
  const [only] = Object.entries(tags);
  return asText.length === 1 && complaint(only![0], only![1]) === null
    ? null
    : `no preset for ${asText.join(', ')}`;
}

describe('keys and values against the tagging schema', () => {
  it('every kind is a preset in its current form', () => {
    expect(KIND_RULES.map((rule) => kindComplaint(rule.forms[0]!)).filter((text) => text !== null)).toEqual(
      [],
    );
  });

  it('every further form of a kind is one that the schema replaces by the current form', () => {
    for (const rule of KIND_RULES) {
      for (const old of rule.forms.slice(1)) {
        expect(DEPRECATED).toContainEqual({ old, replace: rule.forms[0] });
      }
    }
  });

  it('every key and value of the vocabulary is known and current', () => {
    const complaints = Object.entries(VOCABULARY).flatMap(([key, values]) =>
      values.length === 0 ? [complaint(key, null)] : values.map((value) => complaint(key, value)),
    );
    expect(complaints.filter((text) => text !== null)).toEqual([]);
  });

  it('knows what every value of access means, as the schema lists them', () => {
    const listed = FIELDS.find((field) => field.type === 'access')?.options ?? [];
    expect([...VOCABULARY.access].sort()).toEqual([...listed].sort());
  });

  it('every fuel is one that the schema lists', () => {
    const keys = Object.values(FUEL_RULES).flatMap((fuel) => [
      ...fuel.keys,
      ...Object.keys(fuel.kin),
      ...fuel.onlyThese.flatMap((only) => only.keys),
    ]);
    expect(keys.length).toBeGreaterThan(25);
    expect(
      [...keys, ...NOT_A_FUEL].map((key) => complaint(key, 'yes')).filter((text) => text !== null),
    ).toEqual([]);
  });

  it('every grade of petrol that the schema lists is petrol here', () => {
    const grades = [...fuelsInSchema]
      .filter((name) => name.startsWith('octane_'))
      .map((name) => `fuel:${name}`);
    expect(grades.length).toBeGreaterThan(10);
    expect(FUEL_RULES.petrol.keys).toEqual(expect.arrayContaining(grades));
  });

  it('every replaced tag is replaced as the schema does it', () => {
    for (const { key, value, nowKey, nowValue } of REPLACED_TAGS) {
      const replace = { [nowKey]: nowValue === '*' ? '$1' : nowValue };
      expect(DEPRECATED).toContainEqual({ old: { [key]: value }, replace });
    }
    const replacedKeys = REPLACED_TAGS.map(({ key }) => key);
    for (const key of WATER_KEYS) {
      if (!replacedKeys.includes(key)) expect(complaint(key, 'yes')).toBeNull();
    }
  });

  it('the lifecycle prefix that the schema knows is known here, the others are listed as exceptions by prefix', () => {
    const inSchema = new Set(
      FIELDS.map((field) => field.key ?? '')
        .filter((key) => key.endsWith(':amenity'))
        .map((key) => key.slice(0, -':amenity'.length)),
    );
    expect([...inSchema]).toEqual(['disused']);
    expect(LIFECYCLE_PREFIXES).toContain('disused');
    // Prefixes in use for what is gone or not there yet (O15a; ruins, closed, historic, dismantled, planned, obliterated,
    // vacant from memory).
    expect(DISCOURAGED_PREFIXES).toHaveLength(15);
  });

  it('every exception is one: used here, and not in the schema', () => {
    const used = new Set([
      ...KIND_RULES.flatMap((rule) =>
        Object.entries(rule.forms[0]!).map(([key, value]) => `${key}=${value}`),
      ),
      ...Object.entries(VOCABULARY).flatMap(([key, values]) => [
        key,
        ...values.map((value) => `${key}=${value}`),
      ]),
      ...Object.values(FUEL_RULES).flatMap((fuel) => [...fuel.keys, ...Object.keys(fuel.kin)]),
      ...NOT_A_FUEL,
    ]);
    for (const exception of Object.keys(EXCEPTIONS)) {
      expect(used, exception).toContain(exception);
      const [key, value] = exception.split('=') as [string, string | undefined];
      const inSchema =
        value === undefined
          ? fieldsOf(key).length > 0 || fuelsInSchema.has(key.replace('fuel:', ''))
          : PRESETS.some((preset) => Object.keys(preset.tags).length === 1 && preset.tags[key] === value) ||
            fieldsOf(key).some((field) => field.options?.includes(value) === true);
      expect(inSchema, exception).toBe(false);
    }
  });

  it('a misspelt or replaced tag does not pass', () => {
    expect(complaint('drinkin_water', 'yes')).toMatch(/no known key/);
    expect(complaint('drinkable', 'yes')).toMatch(/replaced/);
    expect(complaint('pump', 'hand_pump')).toMatch(/replaced/);
    expect(complaint('pump', 'sometimes')).toMatch(/no value/);
    expect(complaint('access', 'privat')).toMatch(/no value/);
    expect(complaint('fuel:deisel', 'yes')).toMatch(/no known fuel/);
    expect(complaint('fuel:Diesel', 'yes')).toMatch(/no known fuel/);
    expect(kindComplaint({ man_made: 'water_tank' })).toMatch(/replaced/);
    expect(kindComplaint({ man_made: 'storage_tnak', content: 'water' })).toMatch(/no preset/);
    expect(kindComplaint({ amenity: 'drinkingwater' })).toMatch(/no preset/);
  });
});
