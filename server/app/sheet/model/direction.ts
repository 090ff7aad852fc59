/** A letter of a script in use today that runs from right to left; digits of these scripts run from left to right. */
const LETTER = String.raw`(?!\p{Nd})[\p{sc=Arab}\p{sc=Hebr}\p{sc=Syrc}\p{sc=Thaa}\p{sc=Nkoo}]\p{M}*`;
/** Words of such letters, with the blanks between them. */
const RIGHT_TO_LEFT = new RegExp(`(?:${LETTER})+(?: +(?:${LETTER})+)*`, 'gu');

/** A run of text in one direction. */
export interface DirectionRun {
  readonly text: string;
  readonly isRightToLeft: boolean;
}

/**
 * A text in runs of one direction, in the order in which they stand in a line that runs from left to right. For readers
 * that set a whole text in one direction, and its numbers with it.
 */
export function directionRuns(text: string): DirectionRun[] {
  const runs: DirectionRun[] = [];
  let done = 0;
  for (const { 0: words, index } of text.matchAll(RIGHT_TO_LEFT)) {
    if (index > done) runs.push({ text: text.slice(done, index), isRightToLeft: false });
    runs.push({ text: words, isRightToLeft: true });
    done = index + words.length;
  }
  return done < text.length ? [...runs, { text: text.slice(done), isRightToLeft: false }] : runs;
}
