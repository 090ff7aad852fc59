/** Signs that a terminal takes as orders or that turn the direction of reading; JSON itself escapes only the first of them. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;

const escaped = (sign: string): string =>
  Array.from(
    { length: sign.length },
    (_, unit) => `\\u${sign.charCodeAt(unit).toString(16).padStart(4, '0')}`,
  ).join('');

/** A value as JSON in one line that is safe for a terminal: the same value when it is parsed. */
export const jsonLine = (value: unknown): string => `${JSON.stringify(value).replace(UNSEEN, escaped)}\n`;
