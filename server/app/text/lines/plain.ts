/**
 * Text from files made safe for a terminal: control and direction characters (escape sequences among them) become
 * blanks, runs of blanks one.
 */
export function plain(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\s]+/gu, ' ').trim();
}

/** Text cut to a width, with a sign that it was. */
export function shortened(text: string, width: number): string {
  const characters = [...text];
  return characters.length <= width ? text : `${characters.slice(0, width - 1).join('')}…`;
}
