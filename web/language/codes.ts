import { t } from './t.ts';

/** Words of the contract's codes that stand in sentences as they are; in English a code is its own word. */
const CODE_WORDS = {
  fuel: t('fuel'),
  water: t('water'),
  low: t('low'),
  typical: t('typical'),
  high: t('high'),
  drinking: t('drinking'),
  washing: t('washing'),
  on: t('on'),
  back: t('back'),
  rig: t('rig'),
  trip: t('trip'),
  rest: t('rest'),
  easy: t('easy'),
  moderate: t('moderate'),
  hard: t('hard'),
};

/** What a code is called in a sentence; a code that has no words of its own as it is. */
export const worded = (code: string): string =>
  Object.hasOwn(CODE_WORDS, code) ? CODE_WORDS[code as keyof typeof CODE_WORDS] : code;

/** Two and more in one breath: "fuel and water". */
export const andAll = (words: readonly string[]): string =>
  words.reduce((all, word, index) => (index === 0 ? word : t`${all} and ${word}`), '');

/** A noun of the page inside a sentence: without its capital where the language has none for nouns. */
export const inSentence = (label: string): string => {
  const lowered = label.charAt(0).toLowerCase() + label.slice(1);
  return t('nouns have capitals: no') === 'nouns have capitals: no' ? lowered : label;
};
