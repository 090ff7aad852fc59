/** Less than this of what is told in whole figures is noise of the reckoning, and no reason for one more or less. */
const NOISE = 1e-6;

/** A figure of what one needs, or of what lacks: to the next whole one above. */
export const wholeAbove = (value: number): number => Math.ceil(value - NOISE);

/** A figure of what one has: to the next whole one below. */
export const wholeBelow = (value: number): number => Math.floor(value + NOISE);

/** What is aboard, beside what is needed: rounded down, but where it covers the need never below it as that is told. */
export const aboardBeside = (aboardL: number, neededL: number): number =>
  aboardL >= neededL - NOISE ? Math.max(wholeBelow(aboardL), wholeAbove(neededL)) : wholeBelow(aboardL);
