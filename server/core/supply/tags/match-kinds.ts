import type { Commodity } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import { ANY_WITH_WATER, KIND_RULES, type KindRule, LIFECYCLE_PREFIXES, WATER_KEYS } from './kinds.ts';
import { inCurrentForm } from './tag-forms.ts';

/** A kind that an object is of, and the lifecycle prefixes under which its tags name such a kind; none when all is live. */
export interface KindMatch {
  rule: KindRule;
  prefixes: readonly string[];
}

interface FormOfRule {
  rule: KindRule;
  prefix: string;
  /** Further tags, looked for with and without the prefix. */
  rest: [string, string][];
}
/** Every form by its main key, bare and with each prefix, and by its value: readers ask for millions of objects. */
const FORMS = new Map<string, Map<string, FormOfRule[]>>();
for (const prefix of ['', ...LIFECYCLE_PREFIXES]) {
  for (const rule of KIND_RULES) {
    for (const form of rule.forms) {
      const [[key, value], ...rest] = Object.entries(form) as [[string, string], ...[string, string][]];
      const fullKey = prefix === '' ? key : `${prefix}:${key}`;
      const byValue = FORMS.get(fullKey) ?? new Map<string, FormOfRule[]>();
      FORMS.set(fullKey, byValue.set(value, [...(byValue.get(value) ?? []), { rule, prefix, rest }]));
    }
  }
}

/** A value as the table writes it: "Fuel " is fuel. */
const asWord = (value: string | undefined): string | undefined => value?.trim().toLowerCase();

function hasRest(tags: Tags, form: FormOfRule): boolean {
  return form.rest.every(
    ([key, value]) =>
      asWord(tags[key]) === value || (form.prefix !== '' && asWord(tags[`${form.prefix}:${key}`]) === value),
  );
}

/** True when the tags of an object of no supply kind say that there is water, fit or not. */
function speaksOfWater(tags: Tags): boolean {
  // Readers ask of millions of objects, of which hardly any has one of these.
  if (WATER_KEYS.every((key) => tags[key] === undefined)) return false;
  const { drinking_water: stated, 'drinking_water:legal': legal } = inCurrentForm(tags);
  if (stated !== undefined) return stated !== 'no';
  return legal === 'yes';
}

/** The forms of the table that the tags hold. */
function formsOf(tags: Tags): FormOfRule[] {
  const found: FormOfRule[] = [];
  for (const key in tags) {
    const byValue = FORMS.get(key);
    if (byValue !== undefined) found.push(...formsOfValue(byValue, tags, tags[key] ?? ''));
  }
  return found;
}

/** A single value as the table writes them, which is what nearly all are. */
const IN_FORM = /^[a-z0-9_]*$/;
const NO_FORMS: readonly FormOfRule[] = [];

/** The forms that a value, or each of a list of values, makes with the tags beside it. */
function formsOfValue(
  byValue: ReadonlyMap<string, readonly FormOfRule[]>,
  tags: Tags,
  value: string,
): readonly FormOfRule[] {
  const forms = IN_FORM.test(value)
    ? (byValue.get(value) ?? NO_FORMS)
    : value.split(';').flatMap((one) => byValue.get(one.trim().toLowerCase()) ?? []);
  return forms.length === 0 ? forms : forms.filter((form) => hasRest(tags, form));
}

/**
 * The kinds an object with these tags is of: at most one for each commodity, the first of the table, live ones before
 * former ones. Where any kind of that commodity is tagged as former, its prefix comes along: the tags contradict.
 */
export function matchKinds(tags: Tags): KindMatch[] {
  const forms = formsOf(tags);
  if (forms.length === 0) return speaksOfWater(tags) ? [{ rule: ANY_WITH_WATER, prefixes: [] }] : [];
  const matches: KindMatch[] = [];
  for (const commodity of ['fuel', 'water'] as const satisfies readonly Commodity[]) {
    const ours = forms.filter(({ rule }) => rule.commodity === commodity);
    const live = ours.filter(({ prefix }) => prefix === '');
    const candidates = (live.length > 0 ? live : ours).map(({ rule }) => rule);
    const rule = KIND_RULES.find((one) => candidates.includes(one));
    const prefixes = ours.filter(({ prefix }) => prefix !== '').map(({ prefix }) => prefix);
    if (rule !== undefined) matches.push({ rule, prefixes });
    else if (commodity === 'water' && speaksOfWater(tags)) {
      matches.push({ rule: ANY_WITH_WATER, prefixes: [] });
    }
  }
  return matches;
}
