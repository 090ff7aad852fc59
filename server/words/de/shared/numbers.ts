/** A number with a comma before its decimals, where words are no parts. */
export const german = (value: number | string): string => String(value).replace('.', ',');

/** One or several in words: "1 Kanister", "3 Zeilen". */
export const counted = (count: number, one: string, several: string): string =>
  `${count} ${count === 1 ? one : several}`;

/** "dies und das", "dies, das und jenes". */
export const listed = (words: readonly string[], last = 'und'): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
