import { FUEL_WORDS } from '../shared/words.ts';

/** What is spoken of, inside a sentence. */
export const NAME_WORDS = {
  fuels: FUEL_WORDS,
  water: 'Trinkwasser',
  /** An end of a stretch that has no name of its own. */
  ends: { start: 'Start', end: 'Ende', passing: 'eine Versorgung' },
};
