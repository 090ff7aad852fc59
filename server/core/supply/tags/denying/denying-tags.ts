import type { Commodity } from '../../../../contract/common.ts';
import type { Tags } from '../../../input/sources.ts';
import type { TagReasonCode } from '../../../phrases/supply.ts';

/** Reasons that the table gives: those that a tag is known for. */
export type DenyingCode = TagReasonCode | 'for-boats' | 'for-aircraft';

/** A tag that speaks against a supply, whatever kind it is. */
export interface DenyingTag {
  readonly key: string;
  /** The values that do; `but`: all save these. */
  readonly values: readonly string[] | { readonly but: readonly string[] };
  readonly code: DenyingCode;
  /** Left out: for both. */
  readonly commodity?: Commodity;
  /** True where it no longer stands once the tags say that motor vehicles may come. */
  readonly unlessCars?: true;
  /** Page of the OSM wiki. */
  readonly source: string;
}

const ANY_BUT_NO = { but: ['no'] } as const;
const LIFECYCLE = 'Lifecycle prefix';
const SEAMARK = 'Seamarks/Small_Craft_Facilities';

const OUT_OF_USE_KEYS: readonly (readonly [key: string, source: string])[] = [
  ['disused', 'Key:disused'],
  ['abandoned', 'Key:abandoned'],
  ['construction', 'Key:construction'],
  ['proposed', 'Key:proposed'],
  ['planned', LIFECYCLE],
  ['ruins', 'Key:ruins'],
  ['demolished', LIFECYCLE],
  ['removed', LIFECYCLE],
  ['razed', LIFECYCLE],
  ['destroyed', LIFECYCLE],
  ['dismantled', LIFECYCLE],
  ['obliterated', LIFECYCLE],
  ['vacant', LIFECYCLE],
];

/** Words for a state in keys that are free text; other words there say nothing. */
const CLOSED_WORDS = ['closed', 'permanently_closed', 'temporarily_closed', 'shut', 'inactive', 'vacant'];
const GONE_WORDS = ['abandoned', 'disused', 'demolished', 'destroyed', 'removed', 'ruins', 'ruined', 'ruin'];
const BROKEN_WORDS = [
  'broken',
  'out_of_order',
  'nonoperational',
  'non_operational',
  'not_operational',
  'nonfunctional',
  'non_functional',
  'not_functional',
  'defunct',
  'inoperative',
  'damaged',
  'dry',
  'dried_up',
  'empty',
  'blocked',
  'collapsed',
];

const statesIn = (key: string, source: string): DenyingTag[] => [
  { key, values: GONE_WORDS, code: 'out-of-use', source },
  { key, values: CLOSED_WORDS, code: 'closed', source },
  { key, values: BROKEN_WORDS, code: 'broken', source },
];

/** Uses of a way or place that leave out somebody who drives by. */
const NOT_DRIVEN = [
  'no',
  'private',
  'permit',
  'military',
  'agricultural',
  'forestry',
  'emergency',
  'official',
];
const AIRCRAFT_FUELS = ['avgas', '100ll', '91ul', 'jeta', 'jeta1', 'jet_a', 'jet_a1', 'jet-a1', 'jet'];

/** Every tag that speaks against a supply, beside the values of the vocabulary. */
const DENYING_TAGS: readonly DenyingTag[] = [
  ...OUT_OF_USE_KEYS.map(
    ([key, source]): DenyingTag => ({ key, values: ANY_BUT_NO, code: 'out-of-use', source }),
  ),
  { key: 'historic', values: ['yes'], code: 'out-of-use', source: 'Key:historic' },
  { key: 'closed', values: ANY_BUT_NO, code: 'closed', source: LIFECYCLE },
  { key: 'permanently_closed', values: ANY_BUT_NO, code: 'closed', source: LIFECYCLE },
  { key: 'shop', values: ['vacant'], code: 'closed', commodity: 'fuel', source: 'Tag:shop=vacant' },
  ...statesIn('status', 'Key:status'),
  ...statesIn('state', 'Key:state'),
  ...statesIn('condition', 'Key:condition'),
  { key: 'fuel', values: ['no'], code: 'fuel-not-sold', commodity: 'fuel', source: 'Key:fuel' },

  { key: 'motor_vehicle', values: NOT_DRIVEN, code: 'not-for-cars', source: 'Key:motor_vehicle' },
  { key: 'motorcar', values: NOT_DRIVEN, code: 'not-for-cars', source: 'Key:motorcar' },
  { key: 'vehicle', values: NOT_DRIVEN, code: 'not-for-cars', source: 'Key:vehicle' },
  {
    key: 'membership',
    values: ['required', 'yes', 'only', 'members'],
    code: 'members-only',
    source: 'Key:membership',
  },
  { key: 'members_only', values: ['yes'], code: 'members-only', source: 'Key:membership' },
  { key: 'military', values: ANY_BUT_NO, code: 'access-unclear', source: 'Key:military' },
  { key: 'landuse', values: ['military'], code: 'access-unclear', source: 'Tag:landuse=military' },
  { key: 'operator:type', values: ['military'], code: 'access-unclear', source: 'Key:operator:type' },

  {
    key: 'waterway',
    values: ['fuel', 'dock', 'boatyard', 'water_point'],
    code: 'for-boats',
    unlessCars: true,
    source: 'Tag:waterway=fuel',
  },
  {
    key: 'leisure',
    values: ['marina', 'slipway'],
    code: 'for-boats',
    unlessCars: true,
    source: 'Tag:leisure=marina',
  },
  {
    key: 'boat',
    values: ['yes', 'designated', 'only'],
    code: 'for-boats',
    unlessCars: true,
    source: 'Key:boat',
  },
  {
    key: 'ship',
    values: ['yes', 'designated', 'only'],
    code: 'for-boats',
    unlessCars: true,
    source: 'Key:ship',
  },
  { key: 'harbour', values: ANY_BUT_NO, code: 'for-boats', unlessCars: true, source: 'Key:harbour' },
  { key: 'mooring', values: ANY_BUT_NO, code: 'for-boats', unlessCars: true, source: 'Key:mooring' },
  { key: 'seamark:type', values: ANY_BUT_NO, code: 'for-boats', unlessCars: true, source: SEAMARK },
  {
    key: 'seamark:small_craft_facility:category',
    values: ANY_BUT_NO,
    code: 'for-boats',
    unlessCars: true,
    source: SEAMARK,
  },
  {
    key: 'aeroway',
    values: ANY_BUT_NO,
    code: 'for-aircraft',
    commodity: 'fuel',
    unlessCars: true,
    source: 'Key:aeroway',
  },
  ...AIRCRAFT_FUELS.map(
    (name): DenyingTag => ({
      key: `fuel:${name}`,
      values: ['yes', 'only'],
      code: 'for-aircraft',
      commodity: 'fuel',
      unlessCars: true,
      source: 'Tag:aeroway=fuel',
    }),
  ),
  {
    key: 'railway',
    values: ANY_BUT_NO,
    code: 'for-trains',
    commodity: 'fuel',
    unlessCars: true,
    source: 'Tag:railway=fuel',
  },
  {
    key: 'train',
    values: ['yes', 'designated', 'only'],
    code: 'for-trains',
    commodity: 'fuel',
    unlessCars: true,
    source: 'Key:train',
  },
];

/** Keys by which the tags say that motor vehicles may come, and the values that do. */
const CAR_KEYS = ['motor_vehicle', 'motorcar', 'vehicle', 'car'];
const CAR_VALUES = ['yes', 'designated', 'permissive', 'customers', 'destination'];

const BY_KEY = new Map<string, DenyingTag[]>();
for (const row of DENYING_TAGS) BY_KEY.set(row.key, [...(BY_KEY.get(row.key) ?? []), row]);

/** True for a key of the table. */
export const isDenyingKey = (key: string): boolean => BY_KEY.has(key);

const holds = (values: DenyingTag['values'], value: string): boolean =>
  'but' in values ? !values.but.includes(value) : values.includes(value);

/** What of the table an object's tags hold against a commodity; values of a list each by itself. */
export function deniedBy(tags: Tags, commodity: Commodity): DenyingTag[] {
  return Object.entries(tags).flatMap(([key, text]) => {
    const rows = BY_KEY.get(key.toLowerCase());
    if (rows === undefined) return [];
    const values = text.split(';').map((value) => value.trim().toLowerCase());
    return rows
      .filter((row) => row.commodity === undefined || row.commodity === commodity)
      .filter((row) => values.some((value) => holds(row.values, value)))
      .filter((row) => row.unlessCars !== true || !carsMayCome(tags))
      .map((row) => ({ ...row, key }));
  });
}

const carsMayCome = (tags: Tags): boolean => CAR_KEYS.some((key) => CAR_VALUES.includes(tags[key] ?? ''));
