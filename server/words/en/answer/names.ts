import { FUEL_WORDS } from '../rig/fuel-words.ts';

/** What is spoken of, inside a sentence. */
export const NAME_WORDS = {
  fuels: FUEL_WORDS,
  water: 'drinking water',
  /** An end of a stretch that has no name of its own. */
  ends: { start: 'the start', end: 'the end', passing: 'a supply' },
};
