import { InputProblem } from '../../../core/input/problem.ts';
import { JSON_DEPTH_MAX, JSON_PARTS_MAX } from '../source/limits.ts';

const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const OPENING: readonly number[] = [0x5b, 0x7b];
const CLOSING: readonly number[] = [0x5d, 0x7d];

const EXTRACT_REMEDY = 'Cut the area down, or give the extract as .osm.pbf, which is read at any size';

/**
 * Goes once through JSON before it is parsed, and refuses what would take many times its size: lists within lists
 * without end, or more of them than any map has. What is no JSON at all is left to the parser. `remedy`: what to do about
 * a file that is refused, where it is no extract. Throws InputProblem: `too-large`.
 */
export function scanJson(text: string, source: string, remedy = EXTRACT_REMEDY): void {
  const refusal = (came: string, expected: string) =>
    new InputProblem({ code: 'too-large', source, came, expected, remedy });
  let [depth, parts] = [0, 0];
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === QUOTE) at = endOfText(text, at);
    else if (OPENING.includes(code)) {
      depth += 1;
      parts += 1;
      if (depth > JSON_DEPTH_MAX)
        throw refusal(
          `lists and objects within each other over ${JSON_DEPTH_MAX} deep`,
          'ten deep or less, as such files are',
        );
      if (parts > JSON_PARTS_MAX)
        throw refusal(`more than ${JSON_PARTS_MAX} lists and objects`, 'a smaller file in this format');
    } else if (CLOSING.includes(code)) depth -= 1;
  }
}

/** Where the text ends that begins at a quotation mark. */
function endOfText(text: string, from: number): number {
  for (let at = from + 1; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === BACKSLASH) at += 1;
    else if (code === QUOTE) return at;
  }
  return text.length;
}
