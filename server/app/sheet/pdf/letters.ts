import type { Content } from 'pdfmake/interfaces';
import { directionRuns } from '../model/direction.ts';

/** Stands for each sign that the letters of the PDF lack. */
export const LACKING_SIGN = '▯';

/** Letters of a text that a column takes at least in one line (ours). */
const LINE_SIGNS = 22;

/** How texts are set in the letters that there are. */
export interface Letters {
  /** A text with a sign of its own in place of each that there is no letter for. */
  readonly printable: (text: string) => string;
  /** The same as runs of one direction. */
  readonly runs: (text: string) => Content;
}

export function lettersOf(hasSign: (sign: string) => boolean): Letters {
  const printable = (text: string) => [...text].map((sign) => (hasSign(sign) ? sign : LACKING_SIGN)).join('');
  return {
    printable,
    runs: (text) => {
      const runs = directionRuns(printable(text));
      if (runs.every(({ isRightToLeft }) => !isRightToLeft)) return { text: printable(text) };
      return {
        text: runs.map((run) => ({ text: run.isRightToLeft ? inOnePiece(run.text) : run.text })),
      };
    },
  };
}

/**
 * Words that run from right to left, tied together so that they are set as one: words by themselves would come in the
 * order of the others. What is too long for a line goes on in the next.
 */
function inOnePiece(text: string): string {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + word.length < LINE_SIGNS)
      lines[lines.length - 1] = `${line}\u00a0${word}`;
    else lines.push(word);
  }
  return lines.join('\n');
}
