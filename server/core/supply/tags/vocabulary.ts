import type { Tags } from '../../input/sources.ts';
import { DATE_KEYS } from './dates.ts';
import { isDenyingKey } from './denying/denying-tags.ts';
import { LIFECYCLE_PREFIXES } from './kinds.ts';

/**
 * Every tag beside kinds and fuels that judging looks at, with the values that it knows; an empty list stands for free
 * text. The judges can name no other (the compiler sees to it), and a test holds these against OSM's tagging schema.
 */
export const VOCABULARY = {
  access: [
    'yes',
    'permissive',
    'designated',
    'destination',
    'dismount',
    'customers',
    'unknown',
    'permit',
    'private',
    'no',
  ],
  drinking_water: ['yes', 'no', 'untreated', 'conditional', 'seasonal'],
  'drinking_water:legal': ['yes', 'no'],
  seasonal: ['yes', 'no', 'spring', 'summer', 'autumn', 'winter'],
  intermittent: ['no'],
  salt: ['yes'],
  pump: ['no', 'powered'],
  bottle: ['no'],
  'pump:status': ['ok', 'broken', 'missing', 'locked'],
  operational_status: [
    'operational',
    'functional',
    'ok',
    'open',
    'active',
    'broken',
    'closed',
    'out_of_order',
    'nonoperational',
  ],
  hgv: ['only', 'designated'],
  fee: ['no'],
  opening_hours: [],
  fixme: [],
  check_date: [],
  'survey:date': [],
} as const satisfies Record<string, readonly string[]>;

export type KnownKey = keyof typeof VOCABULARY;
export type KnownValue<K extends KnownKey> = (typeof VOCABULARY)[K][number];

export const tagValue = (tags: Tags, key: KnownKey): string | undefined => tags[key];

export const isTagged = <K extends KnownKey>(tags: Tags, key: K, value: KnownValue<K>): boolean =>
  tags[key] === value;

/** True where the key is there and says anything but no. */
export const isTaggedNotNo = (tags: Tags, key: 'intermittent' | 'fee'): boolean =>
  tags[key] !== undefined && tags[key] !== 'no';

const ADVICE_ONLY: readonly string[] = ['fee', 'fixme', 'check_date', 'survey:date'];
const DECIDING = new Set<string>([
  ...Object.keys(VOCABULARY).filter((key) => !ADVICE_ONLY.includes(key)),
  ...DATE_KEYS,
]);

/** True for keys by which a supply of a given kind may count or not. */
export const isDeciding = (key: string): boolean =>
  DECIDING.has(key) ||
  isDenyingKey(key) ||
  key.startsWith('fuel:') ||
  key.startsWith('opening_hours:') ||
  key.endsWith(':conditional') ||
  LIFECYCLE_PREFIXES.some((prefix) => key.startsWith(`${prefix}:`));
