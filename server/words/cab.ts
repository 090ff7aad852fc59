import { CAB_ANSWER_WORDS as GERMAN_ANSWER } from './de/cab/answer.ts';
import { CAB_SCREEN_WORDS as GERMAN_SCREEN } from './de/cab/screen.ts';
import { CAB_ANSWER_WORDS, type CabAnswerWords } from './en/cab/answer.ts';
import { CAB_SCREEN_WORDS, type CabScreenWords } from './en/cab/screen.ts';
import { type Language, language } from './parts/language.ts';

/** The words of a file to take along: what another language has to have. */
export interface CabWords extends CabScreenWords {
  readonly answer: CabAnswerWords;
}

const CABS: Readonly<Record<Language, CabWords>> = {
  en: { ...CAB_SCREEN_WORDS, answer: CAB_ANSWER_WORDS },
  de: { ...GERMAN_SCREEN, answer: GERMAN_ANSWER },
};

/** Those of the language that is spoken: of whoever asked for the file, and in the file of itself. */
export const cabWords = (): CabWords => CABS[language()];
