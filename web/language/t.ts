import { locale } from './language.ts';

/** Texts of a language by their English, holes numbered: "{0} of {1}". */
export type Texts = Readonly<Record<string, string>>;

let texts: Texts = {};

/** Has texts said in another language; what it does not have stays English. */
export function speak(of: Texts): void {
  texts = of;
}

/** A key without what only tells it apart from texts that are alike in English: "side|left" is "left". */
const englishOf = (key: string): string => key.slice(key.indexOf('|') + 1);

const textOf = (key: string): string => texts[key] ?? englishOf(key);

/** The key of a template: its holes by number. */
const keyOf = (strings: TemplateStringsArray): string =>
  strings.reduce((key, text, index) => (index === 0 ? text : `${key}{${index - 1}}${text}`), '');

/** A text for the reader, by its English: t('Close'), or t`${count} of ${all}` with holes. */
export function t(of: string | TemplateStringsArray, ...holes: readonly unknown[]): string {
  if (typeof of === 'string') return textOf(of);
  return piecesOf(of)
    .map((piece) => (typeof piece === 'number' ? String(holes[piece]) : piece))
    .join('');
}

/** A template in the reader's language: its words, and its holes by number, in the order of that language. */
export const piecesOf = (strings: TemplateStringsArray): (string | number)[] =>
  textOf(keyOf(strings))
    .split(/(\{\d+\})/)
    .filter((piece) => piece !== '')
    .map((piece) => (/^\{\d+\}$/.test(piece) ? Number(piece.slice(1, -1)) : piece));

const rules = new Intl.PluralRules(locale);

/** The word for one, or for another number of them. */
export const plural = (count: number, one: string, other: string): string =>
  rules.select(count) === 'one' ? one : other;
