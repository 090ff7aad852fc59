import type { Phrase } from '../phrases/phrases.ts';

/** A default that stood in for something the user did not say: where, what it is, where it comes from. */
export interface Assumption {
  readonly path: string;
  readonly value: Phrase | string;
  readonly why: Phrase | string;
}

/** Notes a default that is taken. */
export type Assume = (path: string, value: Phrase, why: Phrase) => void;

/** Of a default that no source gives. */
export const OURS = { phrase: 'ours', facts: {} } as const satisfies Phrase;
