import type { Phrase } from '../phrases/phrases.ts';

/** A default that stood in for something the user did not say: where, what it is, where it comes from. */
export interface Assumption {
  readonly path: string;
  readonly value: Phrase | string;
  readonly why: Phrase | string;
}
