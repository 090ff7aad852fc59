import type { Mutant } from './mutants.ts';

/** A mutant that no test can or need notice, and why: it does not count. */
export interface Explained extends Pick<Mutant, 'file' | 'at' | 'from' | 'to'> {
  why: string;
}

export const EXPLAINED: readonly Explained[] = [];
