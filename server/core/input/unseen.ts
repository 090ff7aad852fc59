/** Signs that a terminal takes as orders or that turn the direction of reading, escape sequences among them. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;

/** Text with blanks for the signs that nobody sees; tabs and ends of lines stay. */
export const withoutUnseen = (text: string): string =>
  text.replace(UNSEEN, (sign) => ('\t\r\n'.includes(sign) ? sign : ' '));

/** Text from files made safe for a terminal and for one line: signs that nobody sees become blanks, runs of blanks one. */
export const plain = (text: string): string => withoutUnseen(text).replace(/\s+/g, ' ').trim();

/** JSON without such signs: the same value when it is parsed. JSON itself escapes only the first of them. */
export const escapeUnseen = (json: string): string =>
  json.replace(UNSEEN, (sign) =>
    Array.from(
      { length: sign.length },
      (_, unit) => `\\u${sign.charCodeAt(unit).toString(16).padStart(4, '0')}`,
    ).join(''),
  );

/** Whether there is any such sign. */
export const hasUnseen = (text: string): boolean => text.search(UNSEEN) >= 0;
