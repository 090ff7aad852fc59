import type { TripFile } from '../../server/contract/trip.ts';
import { t } from '../language/t.ts';
import { type Json, valueAt } from '../state/json-path.ts';
import { asJson, type Said } from '../state/said.ts';
import { fieldWords } from '../words/field-words.ts';

/** What the list of changes takes of one change. */
const MOST_CHARACTERS = 300;
/** So many changes are told one by one. */
const MOST_TOLD = 3;

/** What was changed from one state to the next, in words a traveller uses: it stands in the list of changes. */
export function changeWords(before: Said, after: Said, nameOf: (id: string) => string): string {
  const told = [
    ...findingWords(before.trip, after.trip, nameOf),
    ...fieldsChanged(asJson(before.rig), asJson(after.rig)),
    ...fieldsChanged(withoutFindings(before.trip), withoutFindings(after.trip)),
  ];
  const first = told.slice(0, MOST_TOLD).join('; ');
  const rest = told.length - MOST_TOLD;
  const all = rest > 0 ? t`${first}; and ${rest} more` : first;
  const words = all === '' ? t('Written otherwise') : all;
  return words.length <= MOST_CHARACTERS ? words : `${words.slice(0, MOST_CHARACTERS - 1)}…`;
}

type Confirmation = NonNullable<TripFile['confirmations']>[number];

const keyOf = ({ id, commodity }: Confirmation): string => `${id} ${commodity ?? ''}`;

/** What was found out of single supplies. */
function findingWords(before: TripFile, after: TripFile, nameOf: (id: string) => string): string[] {
  const [was, is] = [before, after].map(
    ({ confirmations = [] }) => new Map(confirmations.map((each) => [keyOf(each), each])),
  );
  const told: string[] = [];
  for (const [key, finding] of is ?? [])
    if (JSON.stringify(was?.get(key)) !== JSON.stringify(finding))
      told.push(`${nameOf(finding.id)} ${finding.works ? t('works') : t('does not work')}`);
  for (const [key, { id }] of was ?? [])
    if (!is?.has(key)) told.push(t`${nameOf(id)}: what was found out is taken back`);
  return told;
}

const withoutFindings = ({ confirmations: _, ...trip }: TripFile): Json => asJson(trip);

/** The fields that differ, each with what it is now. */
function fieldsChanged(before: Json, after: Json): string[] {
  return [...pathsChanged(before, after, '')].map((path) => {
    const [was, is] = [valueAt(before, path), valueAt(after, path)];
    const words = fieldWords(path, 'metric');
    if (Array.isArray(was) || Array.isArray(is)) return `${words}: ${listWords(lengthOf(was), lengthOf(is))}`;
    if (is === undefined) return t`${words}: no longer told`;
    return isPlain(is) ? `${words}: ${plainWords(is)}` : t`${words} changed`;
  });
}

const lengthOf = (value: Json | undefined): number => (Array.isArray(value) ? value.length : 0);

const listWords = (was: number, is: number): string =>
  is > was ? t`${is - was} added` : is < was ? t`${was - is} taken out` : t('changed');

const isPlain = (value: Json): value is string | number | boolean =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';

const plainWords = (value: string | number | boolean): string =>
  value === true ? t('yes') : value === false ? t('answer|no') : String(value);

/** Paths of the smallest parts that differ; lists count as one part where an entry came or went. */
function* pathsChanged(before: Json | undefined, after: Json | undefined, path: string): Generator<string> {
  if (JSON.stringify(before) === JSON.stringify(after)) return;
  if (Array.isArray(before) && Array.isArray(after) && before.length === after.length) {
    for (const [index, value] of after.entries())
      yield* pathsChanged(before[index], value, `${path}/${index}`);
    return;
  }
  if (isGroup(before) && isGroup(after)) {
    for (const key of new Set([...Object.keys(before), ...Object.keys(after)]))
      yield* pathsChanged(before[key], after[key], `${path}/${key}`);
    return;
  }
  yield path;
}

const isGroup = (value: Json | undefined): value is { [key: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
