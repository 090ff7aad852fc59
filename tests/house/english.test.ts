import { describe, expect, it } from 'vitest';
import { printedIn, printedOf, sentencesIn, sentencesOf } from './english.ts';
import { readModules } from './imports/modules.ts';

/** Files of core that still hold English, and how many texts each. Only ever fewer: what core says stands in server/words. */
const LEFT: Record<string, number> = {
  // A heading that logs are read by.
  'server/core/log/columns.ts': 1,
  'server/core/mass/report/fuel-limits.ts': 2,
  // Part of an id.
  'server/core/plan/failure/reach.ts': 1,
  // What mappers write, looked for and never said.
  'server/core/supply/tags/denying/denying-words.ts': 62,
};

it('core holds no English but what is listed', { tags: 'slow' }, () => {
  const texts = [...readModules(['server/core']).keys()].map((path) => [path, sentencesOf(path)] as const);
  const found = texts.filter(([, all]) => all.length > 0);
  expect(Object.fromEntries(found.map(([path, all]) => [path, all.length]))).toEqual(LEFT);
});

/** Texts of the command line that are not in the catalogue, and how many a file. Only ever fewer. */
const PRINTED_LEFT: Record<string, number> = {
  // Codes that are asked for: a commodity, and which way a column leans.
  'server/app/text/report-text.ts': 2,
  'server/app/text/lines/table-text.ts': 2,
};

it('what the command line prints stands in the catalogue, but for what is listed', () => {
  const texts = [...readModules(['server/app/text']).keys()].map((path) => [path, printedOf(path)] as const);
  expect(texts.length).toBeGreaterThan(15);
  const found = texts.filter(([, all]) => all.length > 0);
  expect(Object.fromEntries(found.map(([path, all]) => [path, all.length]))).toEqual(PRINTED_LEFT);
});

/** Texts of server/words outside its catalogue, and how many a file. Only ever fewer. */
const WORDED_LEFT: Record<string, number> = {
  // A fault of the code.
  'server/words/words-of.ts': 1,
  // Commodities, and how the contract marks a figure and a place; a fault of the code.
  'server/words/answer/answer-of.ts': 6,
  // Codes of languages.
  'server/words/parts/language.ts': 1,
  // How a place is written in metric units, and units that are.
  'server/words/parts/metric.ts': 4,
};

it('what is said stands in the catalogue of a language, but for what is listed', () => {
  const paths = [...readModules(['server/words']).keys()].filter(
    (path) => !/^server\/words\/(en|de)\//.test(path),
  );
  expect(paths.length).toBeGreaterThan(10);
  const found = paths.map((path) => [path, printedOf(path).length] as const).filter(([, count]) => count > 0);
  expect(Object.fromEntries(found)).toEqual(WORDED_LEFT);
});

describe('what may be printed as it stands', () => {
  it.each([
    ["left('from')", ['from']],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: a source text
    ['const a = `${b} km`', ['… km']],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: a source text
    ["const a = kind === 'end' ? 'the end' : `- ${b}, ${c}`", ['the end']],
    ["const a = kind + 'ended'", ['ended']],
    ["switch (a) { case 'end': say('done'); }", ['done']],
    ["const a = 'kind' in b;", []],
    ["import { a } from './some-words.ts'; type B = 'two words'; const c: 'x-y' | 'xyz' = d;", []],
    ["export type { A } from './some-words.ts'; export const a = 'said';", ['said']],
    ["const KINDS = ['fuel', 'water'] as const;", []],
    ["const a = ['fuel', 'water'];", ['fuel', 'water']],
    ["const a = { 'a key': b['other'], c: 'said' };", ['said']],
    ['const a = /words of a pattern/u;', []],
  ])('%s', (source, texts) => {
    expect(printedIn('a.ts', source)).toEqual(texts);
  });
});

describe('what reads as English', () => {
  it.each([
    ["const a = 'it may have frozen';", ['it may have frozen']],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: a source text
    ['const a = `stops ${x} % of all germs`;', ['stops … % of all germs']],
    ["const a = { b: ['Ask the owner first'] };", ['Ask the owner first']],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: a source text
    ['const a = `${f(`one of these`)}`;', ['one of these']],
    ["const a = 'two words'; const b = 'a-code-of-many-words';", []],
    ["throw new Error('this cannot be so');", []],
    ['// it is only said here\nconst a = 1;', []],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: a source text
    ['const a = `${b} ${c} ${d}`;', []],
  ])('%s', (source, texts) => {
    expect(sentencesIn('a.ts', source)).toEqual(texts);
  });
});
