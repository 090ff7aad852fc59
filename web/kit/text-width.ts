/**
 * Widths of letters in em of a bold road-sign sans: ours, by eye, on the wide side. They decide what fits; nothing
 * is drawn by them but the frames around verdict words.
 */
const CLASSES: readonly [RegExp, number][] = [
  [/[ilj.,:;'|!]/, 0.3],
  [/[\s\u00a0]/, 0.24],
  [/[frt()\-/I]/, 0.38],
  [/[mwMW@%&]/, 0.88],
  [/[A-Z]/, 0.64],
  [/[0-9]/, 0.6],
  [/[a-z]/, 0.57],
];
/** Letters outside the table: accents, other alphabets. Full-width ones are drawn in a square. */
const OTHER_EM = 0.65;
const FULL_WIDTH_EM = 1;

function letterEm(letter: string): number {
  const known = CLASSES.find(([letters]) => letters.test(letter));
  if (known !== undefined) return known[1];
  return (letter.codePointAt(0) ?? 0) >= 0x2e80 ? FULL_WIDTH_EM : OTHER_EM;
}

/** About how wide a text stands, px. */
export const textWidthPx = (text: string, fontPx: number): number =>
  [...text].reduce((sum, letter) => sum + letterEm(letter), 0) * fontPx;

/** The text, or its beginning with an ellipsis, so that it stands within `widthPx`. */
export function fitText(text: string, fontPx: number, widthPx: number): string {
  if (textWidthPx(text, fontPx) <= widthPx) return text;
  const letters = [...text];
  let usedPx = fontPx; // the ellipsis
  let count = 0;
  for (const letter of letters) {
    usedPx += letterEm(letter) * fontPx;
    if (usedPx > widthPx) break;
    count++;
  }
  return `${letters.slice(0, Math.max(1, count)).join('').trimEnd()}…`;
}
