import { fitText, textWidthPx } from '../../kit/text-width.ts';

/** A text in lines that stand within `widthPx`, at most so many; what is too long is cut with an ellipsis. */
export function wrapText(
  text: string,
  fontPx: number,
  { widthPx, lines: most }: { widthPx: number; lines: number },
): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines.at(-1);
    const longer = line === undefined ? word : `${line} ${word}`;
    const goesOn = line !== undefined && (lines.length === most || textWidthPx(longer, fontPx) <= widthPx);
    if (goesOn) lines.splice(-1, 1, longer);
    else lines.push(word);
  }
  return lines.map((line) => fitText(line, fontPx, widthPx));
}
