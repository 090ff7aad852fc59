/** Texts of a language by their English, holes numbered: "{0} of {1}". */
type Texts = Readonly<Record<string, string>>;

/** None yet: the page speaks English. */
const texts: Texts = {};

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
