import type { Commodity } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import type { TagReasonCode } from '../../phrases/supply.ts';
import type { KindMatch } from '../tags/match-kinds.ts';
import { effectOf } from '../tags/reasons.ts';
import { type SeasonState, seasonState } from '../tags/seasons.ts';
import { isTagged, isTaggedNotNo, type KnownKey, type KnownValue, tagValue } from '../tags/vocabulary.ts';
import { type Judgement, tagged } from './judgement.ts';

/** What each `access` value means to a traveller; null where it means nothing to look out for. */
const ACCESS_RULES: Record<KnownValue<'access'>, TagReasonCode | null> = {
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

/** Whether a value of `operational_status` or `pump:status` says that it works. */
const STATUS_RULES: Record<KnownValue<'operational_status' | 'pump:status'>, 'works' | 'broken'> = {
  operational: 'works',
  functional: 'works',
  ok: 'works',
  open: 'works',
  active: 'works',
  broken: 'broken',
  closed: 'broken',
  out_of_order: 'broken',
  nonoperational: 'broken',
  missing: 'broken',
  locked: 'broken',
};
const STATUS_KEYS = ['operational_status', 'pump:status'] as const satisfies KnownKey[];

/** Say of the whole object that it is out of use or not yet built (discouraged, still met). */
const OUT_OF_USE_KEYS = ['disused', 'abandoned', 'construction'] as const satisfies KnownKey[];

const ruleFor = <T>(rules: Readonly<Record<string, T>>, value: string): T | undefined =>
  Object.hasOwn(rules, value) ? rules[value] : undefined;

function judgeAccess(tags: Tags, judgement: Judgement): void {
  for (const value of tagValue(tags, 'access')?.split(';') ?? []) {
    const code = ruleFor<TagReasonCode | null>(ACCESS_RULES, value.trim());
    if (code === null) continue;
    const known = code ?? 'access-unclear';
    if (effectOf(known) === 'weakens') judgement.against(known, tagged(tags, 'access'));
    else judgement.add(known, tagged(tags, 'access'));
  }
}

/** When an object gives, and what is to be known about that. */
interface SeasonQuestion {
  readonly commodity: Commodity;
  readonly days: readonly string[];
  readonly lat: number;
}

function judgeSeason({ commodity, days, lat }: SeasonQuestion, tags: Tags, judgement: Judgement): void {
  const bySeason =
    commodity === 'water' &&
    isTagged(tags, 'drinking_water', 'seasonal') &&
    (tagValue(tags, 'seasonal') === undefined || isTagged(tags, 'seasonal', 'no'));
  const words = bySeason ? 'yes' : tagValue(tags, 'seasonal');
  const season = tagged(tags, bySeason ? 'drinking_water' : 'seasonal').tags.join();
  const [from] = days;
  const to = days.length > 1 ? (days.at(-1) ?? null) : null;
  if (from === undefined) {
    if (seasonState(words, null, lat) === 'unknown') {
      judgement.against('season-unknown', { season, dated: false });
    }
    return;
  }
  const state = worstOf(days.map((day) => seasonState(words, day, lat)));
  if (state === 'in') judgement.add('in-season', { season });
  if (state === 'out') judgement.against('out-of-season', { season, from, to });
  if (state === 'unknown') judgement.against('season-unknown', { season, dated: true });
}

/** Out of season on one of the days is out of season. */
const worstOf = (states: readonly SeasonState[]): SeasonState =>
  (['out', 'unknown', 'in', 'always'] as const).find((state) => states.includes(state)) ?? 'always';

/**
 * What the tags say about whether anybody can make use of it: in use, open, allowed, working, in season on all of the
 * days (ISO dates; none where no date is given).
 */
export function judgeUse(
  match: KindMatch,
  tags: Tags,
  { days, lat }: { days: readonly string[]; lat: number },
  judgement: Judgement,
): void {
  for (const prefix of match.prefixes)
    judgement.against('out-of-use', { tags: [`${prefix}:${match.rule.key}`] });
  for (const key of OUT_OF_USE_KEYS) {
    if (isTaggedNotNo(tags, key)) judgement.against('out-of-use', tagged(tags, key));
  }
  judgeAccess(tags, judgement);
  judgeSeason({ commodity: match.rule.commodity, days, lat }, tags, judgement);

  for (const key of STATUS_KEYS) {
    const value = tagValue(tags, key);
    const status = value === undefined ? 'works' : ruleFor(STATUS_RULES, value);
    if (status === 'works') continue;
    judgement.against(status ?? 'status-unclear', tagged(tags, key));
  }
  const hours = tagValue(tags, 'opening_hours')?.trim();
  if (hours !== undefined && hours !== '') {
    if (/^(off|closed)\b[^;,]*$/i.test(hours)) judgement.against('closed', tagged(tags, 'opening_hours'));
    else if (hours !== '24/7') judgement.add('opening-hours', { hours });
  }
  if (isTagged(tags, 'hgv', 'only')) judgement.against('lorries-only', tagged(tags, 'hgv'));
  if (isTaggedNotNo(tags, 'fee') && match.rule.commodity === 'water') {
    judgement.add('fee', tagged(tags, 'fee'));
  }
  const fixme = tagValue(tags, 'fixme');
  if (fixme !== undefined) judgement.add('mapper-doubt', { note: fixme });
}
