/** Words in small letters without accents, single spaces between and around them. */
export const wholeWords = (text: string): string =>
  ` ${text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}+/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()} `;

/** Whether a text of whole words holds any of some. */
export const holdsAny = (words: string, sought: readonly string[]): boolean =>
  sought.some((word) => words.includes(wholeWords(word)));
