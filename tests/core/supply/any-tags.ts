import fc from 'fast-check';
import type { Commodity, Evidence } from '../../../server/contract/common.ts';
import type { FuelKind } from '../../../server/contract/rig.ts';
import type { Tags } from '../../../server/core/input/sources.ts';
import { FUEL_RULES, NOT_A_FUEL } from '../../../server/core/supply/judge/fuels.ts';
import type { Judging } from '../../../server/core/supply/judge/rules.ts';
import { KIND_RULES, LIFECYCLE_PREFIXES } from '../../../server/core/supply/tags/kinds.ts';
import { REPLACED_TAGS } from '../../../server/core/supply/tags/tag-forms.ts';
import { VOCABULARY } from '../../../server/core/supply/tags/vocabulary.ts';

const forms = KIND_RULES.flatMap((rule) => rule.forms);
const liveKind: fc.Arbitrary<Tags> = fc.constantFrom(...forms);
const formerKind: fc.Arbitrary<Tags> = fc
  .tuple(fc.constantFrom(...LIFECYCLE_PREFIXES), liveKind)
  .map(([prefix, form]) =>
    Object.fromEntries(Object.entries(form).map(([key, value]) => [`${prefix}:${key}`, value])),
  );
const otherObject: fc.Arbitrary<Tags> = fc.constantFrom<Tags[]>(
  { tourism: 'camp_site' },
  { building: 'yes' },
  { amenity: 'toilets' },
  {},
);

const DATES = ['2019-05-01', '2024-06-01', '2025-12', '2206-01-01', 'soon'];
const oddValue = fc.constantFrom('yes', 'no', 'maybe', '', 'constructor');
const tagOf = (key: string, values: readonly string[]): fc.Arbitrary<[string, string]> =>
  fc.tuple(fc.constant(key), fc.oneof(fc.constantFrom(...values, 'yes'), oddValue));
const detail: fc.Arbitrary<[string, string]> = fc.oneof(
  ...Object.entries(VOCABULARY).map(([key, values]) =>
    key.endsWith('date') ? tagOf(key, DATES) : tagOf(key, values),
  ),
  ...REPLACED_TAGS.map(({ key, value }) => tagOf(key, [value])),
);
const fuelKeys = [
  ...new Set([
    ...Object.values(FUEL_RULES).flatMap((fuel) => [...fuel.keys, ...Object.keys(fuel.kin)]),
    ...NOT_A_FUEL,
    'fuel:electricity',
  ]),
];
const fuelTag: fc.Arbitrary<[string, string]> = fc.tuple(fc.constantFrom(...fuelKeys), oddValue);

/** Tags made of what the rules know, and of what they do not. */
export const anyTags: fc.Arbitrary<Tags> = fc
  .tuple(
    fc.oneof({ weight: 6, arbitrary: liveKind }, { weight: 1, arbitrary: formerKind }, otherObject),
    fc.oneof({ weight: 3, arbitrary: fc.constant({}) }, liveKind),
    fc.array(detail, { maxLength: 4 }),
    fc.array(fuelTag, { maxLength: 3 }),
  )
  .map(([kind, second, details, fuels]) => ({
    ...second,
    ...kind,
    ...Object.fromEntries(details),
    ...Object.fromEntries(fuels),
  }));

export const ANY_EVIDENCE: readonly Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
export const COMMODITIES: readonly Commodity[] = ['fuel', 'water'];
const level = fc.constantFrom(...ANY_EVIDENCE);
const day = fc.constantFrom('2026-01-15', '2026-04-15', '2026-07-15', '2026-10-15');

export const anyJudging: fc.Arbitrary<Judging> = fc.record({
  fuelKind: fc.constantFrom(...(Object.keys(FUEL_RULES) as FuelKind[])),
  ropeAndBucket: fc.boolean(),
  counting: fc.record({ fuel: level, water: level }),
  on: fc.option(day, { nil: null }),
  confirmations: fc.array(
    fc.record({
      id: fc.constantFrom('node/1', 'node/2'),
      on: fc.constantFrom('2025-01-01', '2026-01-10', '2026-07-10', '2026-07-15'),
      works: fc.boolean(),
    }),
    { maxLength: 2 },
  ),
});

export const anyEdit: fc.Arbitrary<string | null> = fc.option(
  fc.constantFrom(
    '2012-03-01T00:00:00Z',
    '2023-01-15T00:00:00Z',
    '2023-10-16T00:00:00Z',
    '2026-01-01T00:00:00Z',
  ),
  { nil: null },
);
