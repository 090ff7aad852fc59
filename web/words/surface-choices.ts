import type { Surface } from '../../server/contract/surface.ts';

/** The compiler finds the missing row: the page takes types of the contract only, its lists would bring the schemas along. */
const WORDS: Record<Surface, string> = {
  sealed: 'sealed',
  gravel: 'gravel',
  track: 'track',
  sand: 'sand',
  rock: 'rock',
  mud: 'mud',
  salt: 'salt',
  unknown: 'unknown',
};

/** The surfaces as choices, best first. */
export const SURFACE_CHOICES = (Object.keys(WORDS) as Surface[]).map((value) => ({
  value,
  words: WORDS[value],
}));
