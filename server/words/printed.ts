import { GERMAN_PRINTED } from './de/printed/printed.ts';
import { ENGLISH_PRINTED, type PrintedWords } from './en/printed/printed.ts';
import { type Language, language } from './parts/language.ts';

/** Those of the language that the command line prints in. */
export const PRINTED: PrintedWords = ENGLISH_PRINTED;

const PRINTS: Readonly<Record<Language, PrintedWords>> = { en: ENGLISH_PRINTED, de: GERMAN_PRINTED };

/** Those of paper and files to take along, in the language that is spoken. */
export const printed = (): PrintedWords => PRINTS[language()];
