const isSpace = (code: number): boolean => code === 0x20 || (code >= 0x09 && code <= 0x0d) || code === 0xfeff;

/**
 * The text behind declarations, comments and white space; null where one of them does not end. One pass without a
 * pattern that tries again: comments by the thousand cost what their letters cost.
 */
export function behindProlog(text: string): string | null {
  let at = 0;
  for (;;) {
    while (at < text.length && isSpace(text.charCodeAt(at))) at += 1;
    const end = text.startsWith('<?', at) ? '?>' : text.startsWith('<!--', at) ? '-->' : null;
    if (end === null) return text.slice(at);
    const ends = text.indexOf(end, at + 2);
    if (ends === -1) return null;
    at = ends + end.length;
  }
}
