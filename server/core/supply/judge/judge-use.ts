import type { Commodity } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import type { SupplyReasonCode, TagReasonCode } from '../../phrases/supply.ts';
import { datesAgainst } from '../tags/dates.ts';
import { denialsIn } from '../tags/denying/denials.ts';
import { deniedBy } from '../tags/denying/denying-tags.ts';
import { formerHosts } from '../tags/hosts.ts';
import { openingOf } from '../tags/hours.ts';
import { ANY_WITH_WATER, prefixOf, WATER_KEYS } from '../tags/kinds.ts';
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

/** Hours that say no more than that it never opens. */
const SHUT_FOR_GOOD = /^(off|closed|no|none|never|permanently closed)\b[^;,]*$/i;

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

/** For what a supply is judged. */
export interface UseQuestion {
  /** ISO dates on which it is to be in season; none where no date is given. */
  readonly days: readonly string[];
  /** ISO date by which it must be there: of departure, else today; null: none is told. */
  readonly on: string | null;
  readonly lat: number;
  /** True where the rig is known to be one of the heavy vehicles that signs for lorries mean. */
  readonly isHeavy: boolean;
}
interface SeasonQuestion extends Pick<UseQuestion, 'days' | 'lat'> {
  readonly commodity: Commodity;
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

/** The tags that say of the object, of the key that makes it one, or of what hangs on it, that it is out of use. */
function outOfUse({ rule, prefixes }: KindMatch, tags: Tags): string[] {
  const own = new Set<string>();
  if (rule === ANY_WITH_WATER) for (const tag of formerHosts(tags)) own.add(tag);
  for (const key in tags) {
    const [prefix, bare] = prefixOf(key);
    if (prefix === null || tags[key] === 'no') continue;
    const makes = rule.forms.some((form) => form[bare] !== undefined);
    const hangs = rule.commodity === 'water' ? WATER_KEYS.includes(bare as never) : bare === 'fuel';
    // Of a key that makes an object any other value speaks of what was there before.
    if ((makes && tags[key] === 'yes') || hangs) own.add(`${key}=${tags[key]}`);
  }
  return [...prefixes.map((prefix) => `${prefix}:${rule.key}`), ...own];
}

function judgeDenying(match: KindMatch, tags: Tags, judgement: Judgement): void {
  for (const { code, key } of deniedBy(tags, match.rule.commodity)) {
    // The kind itself says so already.
    if (match.rule.reason === code) continue;
    judgement.against<SupplyReasonCode>(code, tagged(tags, key));
  }
}

function judgeDates(tags: Tags, on: string | null, judgement: Judgement): void {
  if (on === null) return;
  for (const { key, state } of datesAgainst(tags, on)) {
    judgement.against(state === 'gone' ? 'out-of-use' : 'status-unclear', tagged(tags, key));
  }
}

/** Signs for lorries: a light vehicle is served where diesel for cars is stated. */
function judgeLorries(match: KindMatch, tags: Tags, question: UseQuestion, judgement: Judgement): void {
  if (question.isHeavy) return;
  const meant =
    isTagged(tags, 'hgv', 'only') ||
    (isTagged(tags, 'hgv', 'designated') && match.rule.commodity === 'fuel' && tags['fuel:diesel'] !== 'yes');
  if (meant) judgement.against('lorries-only', tagged(tags, 'hgv'));
}

function judgeStatus(tags: Tags, judgement: Judgement): void {
  for (const key of STATUS_KEYS) {
    const value = tagValue(tags, key);
    const status = value === undefined ? 'works' : ruleFor(STATUS_RULES, value);
    if (status === 'works') continue;
    judgement.against(status ?? 'status-unclear', tagged(tags, key));
  }
}

/**
 * What the tags say about whether anybody can make use of it: in use, open, allowed, working, in season on all of the
 * days.
 */
export function judgeUse(match: KindMatch, tags: Tags, question: UseQuestion, judgement: Judgement): void {
  for (const tag of outOfUse(match, tags)) judgement.against('out-of-use', { tags: [tag] });
  judgeDenying(match, tags, judgement);
  for (const denial of denialsIn(tags)) judgement.against('words-deny', denial);
  judgeDates(tags, question.on, judgement);
  judgeAccess(tags, judgement);
  judgeSeason({ ...question, commodity: match.rule.commodity }, tags, judgement);
  judgeStatus(tags, judgement);

  const hours = openingOf(tags, match.rule.commodity);
  if (hours !== null && SHUT_FOR_GOOD.test(hours.text)) judgement.against('closed', { tags: [hours.tag] });
  else if (hours !== null && hours.text !== '24/7') judgement.add('opening-hours', { hours: hours.text });
  judgeLorries(match, tags, question, judgement);
  if (isTaggedNotNo(tags, 'fee') && match.rule.commodity === 'water') {
    judgement.add('fee', tagged(tags, 'fee'));
  }
  const fixme = tagValue(tags, 'fixme');
  if (fixme !== undefined) judgement.add('mapper-doubt', { note: fixme });
}
