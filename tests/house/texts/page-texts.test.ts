import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import GERMAN from '../../../web/language/de.json' with { type: 'json' };
import { ROOT, readModules } from '../imports/modules.ts';
import { textsIn, textsOf } from './page-texts.ts';

/** The page without the view from the seat, whose words are the server's. */
const PATHS = [...readModules(['web']).keys()].filter((path) => !path.startsWith('web/cab/'));

/** Texts that stand bare, and how many a file. Only ever fewer. */
const BARE_LEFT: Record<string, number> = {
  // Names of columns in a file.
  'web/log/LogSection.tsx': 2,
};

/** Words that are looked up by a code or a unit of the contract. */
const BY_CODE = ['%', 'h', 'min', 'L a day', 'l a day', 'days', 'hours', 'log', '×', 'NTU'];

const KEYS = new Set(PATHS.flatMap((path) => textsOf(path).keys));

it('every text of the page is looked up, but for what is listed', { tags: 'slow' }, () => {
  expect(PATHS.length).toBeGreaterThan(200);
  const found = PATHS.map((path) => [path, textsOf(path).bare] as const).filter(
    ([, bare]) => bare.length > 0,
  );
  expect(found.flatMap(([path, bare]) => (bare.length === BARE_LEFT[path] ? [] : [[path, bare]]))).toEqual(
    [],
  );
});

it('every text of the page has German', () => {
  expect(KEYS.size).toBeGreaterThan(1500);
  expect([...KEYS].filter((key) => !Object.hasOwn(GERMAN, key)).sort()).toEqual([]);
});

it('has German of no text that the page no longer has', () => {
  expect(Object.keys(GERMAN).filter((key) => !KEYS.has(key) && !BY_CODE.includes(key))).toEqual([]);
});

/** Names that the program goes by: a key, the id of a picture, a field beside the words for it. Another language would break them. */
const NAMES = /\b(?:key|id|kind|type|code): t[(`]|Id = [^\n]*=> t[(`]|\bname: t\('[^']*'\), words:/g;
const namesIn = (source: string): string[] => source.match(NAMES) ?? [];

it('looks up no name that the program itself goes by', () => {
  expect(PATHS.flatMap((path) => namesIn(readFileSync(join(ROOT, path), 'utf8')))).toEqual([]);
  expect(namesIn('{ key: t`gap`, }')).toHaveLength(1);
  expect(namesIn('export const hatchId = (c: string): string => t`ground`;')).toHaveLength(1);
  expect(namesIn("{ name: t('by'), words: t('Who') }")).toHaveLength(1);
});

const holesOf = (text: string): string[] => (text.match(/\{\d+\}/g) ?? []).toSorted();

it('has every hole of the English in the German, each once', () => {
  const wrong = Object.entries(GERMAN).filter(([key, text]) => holesOf(key).join() !== holesOf(text).join());
  expect(wrong).toEqual([]);
});

it.each([
  ["t('Close')", ['Close'], []],
  // biome-ignore lint/suspicious/noTemplateCurlyInString: a source text
  ['tx`Leave ${<b>all</b>} of ${t`${a} more`}`', ['Leave {0} of {1}', '{0} more'], ['all']],
  ["<p title='Why'>{a ? 'one' : t('two')}</p>", ['two'], ['Why', 'one']],
  ["<p className='soft'>{b('one')} – 3 m</p>", [], []],
])('reads %s', (source, keys, bare) => {
  const found = textsIn('a.tsx', `const a = ${source};`);
  expect(found.keys.toSorted()).toEqual(keys.toSorted());
  expect(found.bare.toSorted()).toEqual(bare.toSorted());
});
