import type { Phrase } from '../phrases/phrases.ts';

/** The unit of a term that is metres of way; answers have kilometres. */
export const METRES_OF_WAY = 'm of way';

/** One term of a sum: what it is, how much, in which unit. */
export interface Term {
  readonly label: Phrase;
  readonly value: number;
  readonly unit: string;
}
