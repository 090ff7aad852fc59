import type { Tags } from '../sources.ts';
import { asTag, type Judgement } from './judgement.ts';
import type { KindMatch } from './kinds.ts';
import { effectOf, type ReasonCode } from './reasons.ts';
import { seasonState } from './seasons.ts';

/** `access` values (id-tagging-schema, field `access`), and what each means to a traveller; null where it means nothing. */
export const ACCESS_RULES: Readonly<Record<string, ReasonCode | null>> = {
  yes: null,
  permissive: null,
  designated: null,
  destination: null,
  dismount: null,
  customers: 'customers-only',
  unknown: 'access-unknown',
  permit: 'permit-needed',
  private: 'not-public',
  no: 'not-public',
};

/** `operational_status` and `pump:status` values that say it works or does not (from memory; not in the schema). */
export const STATUS_WORKS: readonly string[] = ['operational', 'functional', 'ok', 'open', 'active', 'yes'];
export const STATUS_BROKEN: readonly string[] = [
  'broken',
  'closed',
  'out_of_order',
  'nonoperational',
  'missing',
  'locked',
  'no',
];
const STATUS_KEYS = ['operational_status', 'pump:status'] as const;

/** Keys that say of the whole object that it is out of use (discouraged, still met). */
export const OUT_OF_USE_KEYS = ['disused', 'abandoned'] as const;

function judgeAccess(tags: Tags, judgement: Judgement): void {
  for (const value of tags.access?.split(';') ?? []) {
    const code = ACCESS_RULES[value.trim()];
    if (code === null) continue;
    const known = code ?? 'access-unclear';
    judgement.add(known, asTag(tags, 'access'), effectOf(known) === 'weakens' ? 'doubtful' : undefined);
  }
}

function judgeSeason(tags: Tags, on: string | null, lat: number, judgement: Judgement): void {
  const bySeason =
    tags.drinking_water === 'seasonal' && (tags.seasonal === undefined || tags.seasonal === 'no');
  const words = bySeason ? 'yes' : tags.seasonal;
  const detail = bySeason ? asTag(tags, 'drinking_water') : asTag(tags, 'seasonal');
  const state = seasonState(words, on, lat);
  if (state === 'in') judgement.add('in-season', detail);
  if (state === 'out') judgement.against('out-of-season', `${detail}, judged for ${on}`);
  if (state === 'unknown') {
    judgement.against('season-unknown', on === null ? `${detail}, no date of departure given` : detail);
  }
}

/** What the tags say about whether anybody can make use of it: in use, open, allowed, working, in season. */
export function judgeUse(
  match: KindMatch,
  tags: Tags,
  on: string | null,
  lat: number,
  judgement: Judgement,
): void {
  for (const prefix of match.prefixes) judgement.against('out-of-use', `${prefix}:${match.rule.key}`);
  for (const key of OUT_OF_USE_KEYS) {
    if (tags[key] !== undefined && tags[key] !== 'no') judgement.against('out-of-use', asTag(tags, key));
  }
  judgeAccess(tags, judgement);
  judgeSeason(tags, on, lat, judgement);

  for (const key of STATUS_KEYS) {
    const value = tags[key];
    if (value === undefined || STATUS_WORKS.includes(value)) continue;
    judgement.against(STATUS_BROKEN.includes(value) ? 'broken' : 'status-unclear', asTag(tags, key));
  }
  const hours = tags.opening_hours?.trim();
  if (hours !== undefined && hours !== '') {
    if (/^(off|closed)\b[^;,]*$/i.test(hours)) judgement.against('closed', asTag(tags, 'opening_hours'));
    else if (hours !== '24/7') judgement.add('opening-hours', hours);
  }
  if (tags.hgv === 'only') judgement.against('lorries-only', asTag(tags, 'hgv'));
  if (tags.fee !== undefined && tags.fee !== 'no' && match.rule.commodity === 'water') {
    judgement.add('fee', asTag(tags, 'fee'));
  }
  if (tags.fixme !== undefined) judgement.add('mapper-doubt', tags.fixme);
}
