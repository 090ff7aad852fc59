import type { Commodity } from '../../contract/common.ts';
import type { Tags } from '../sources.ts';
import { ANY_WITH_WATER, KIND_RULES, type KindRule, LIFECYCLE_PREFIXES } from './kinds.ts';

/** A kind that an object is of, and the lifecycle prefixes under which its tags name such a kind; none when all is live. */
export interface KindMatch {
  rule: KindRule;
  prefixes: readonly string[];
}

interface FormOfRule {
  rule: KindRule;
  prefix: string;
  value: string;
  /** Further tags, looked for with and without the prefix. */
  rest: [string, string][];
}
/** Every form under its main key, bare and with each prefix: one look-up for each tag of an object. */
const FORMS_BY_KEY = new Map<string, FormOfRule[]>();
for (const prefix of ['', ...LIFECYCLE_PREFIXES]) {
  for (const rule of KIND_RULES) {
    for (const form of rule.forms) {
      const [[key, value], ...rest] = Object.entries(form) as [[string, string], ...[string, string][]];
      const fullKey = prefix === '' ? key : `${prefix}:${key}`;
      const forms = FORMS_BY_KEY.get(fullKey) ?? [];
      forms.push({ rule, prefix, value, rest });
      FORMS_BY_KEY.set(fullKey, forms);
    }
  }
}

function hasRest(tags: Tags, form: FormOfRule): boolean {
  return form.rest.every(
    ([key, value]) => tags[key] === value || (form.prefix !== '' && tags[`${form.prefix}:${key}`] === value),
  );
}

/** True when the tags of an object of no supply kind say that there is water, fit or not. */
function speaksOfWater(tags: Tags): boolean {
  const stated = tags.drinking_water ?? tags.drinkable;
  if (stated !== undefined) return stated !== 'no';
  return tags['drinking_water:legal'] === 'yes';
}

/**
 * The kinds an object with these tags is of: at most one for each commodity, the first of the table, live ones before
 * former ones. Where any kind of that commodity is tagged as former, its prefix comes along: the tags contradict.
 */
export function matchKinds(tags: Tags): KindMatch[] {
  const live = new Set<KindRule>();
  const former = new Map<KindRule, string>();
  for (const key in tags) {
    const forms = FORMS_BY_KEY.get(key);
    if (forms === undefined) continue;
    const value = tags[key]!;
    const values = value.includes(';') ? value.split(';').map((part) => part.trim()) : [value];
    for (const form of forms) {
      if (!values.includes(form.value) || !hasRest(tags, form)) continue;
      if (form.prefix === '') live.add(form.rule);
      else former.set(form.rule, form.prefix);
    }
  }
  const matches: KindMatch[] = [];
  for (const commodity of ['fuel', 'water'] as const satisfies readonly Commodity[]) {
    const isOurs = (rule: KindRule) => rule.commodity === commodity;
    const prefixes = [...former].filter(([rule]) => isOurs(rule)).map(([, prefix]) => prefix);
    const found = live.size === 0 && prefixes.length === 0 ? [] : KIND_RULES.filter(isOurs);
    const rule =
      found.find((candidate) => live.has(candidate)) ?? found.find((candidate) => former.has(candidate));
    if (rule !== undefined) matches.push({ rule, prefixes });
    else if (commodity === 'water' && speaksOfWater(tags)) {
      matches.push({ rule: ANY_WITH_WATER, prefixes: [] });
    }
  }
  return matches;
}
