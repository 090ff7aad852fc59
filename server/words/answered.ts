import { GERMAN_ANSWER } from './de/answer/answer.ts';
import { type AnswerWords, ENGLISH_ANSWER } from './en/answer/answer.ts';
import { type Language, language } from './parts/language.ts';

const ANSWERS: Readonly<Record<Language, AnswerWords>> = { en: ENGLISH_ANSWER, de: GERMAN_ANSWER };

/** The words of the sentences on top of an answer, in the language that is spoken. */
export const answerWords = (): AnswerWords => ANSWERS[language()];
