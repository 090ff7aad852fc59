import { ENGLISH_ANSWER } from './en/answer/answer.ts';

/** The words of the sentences on top of an answer: what another language has to have. */
export type AnswerWords = typeof ENGLISH_ANSWER;

/** Those of the language that it answers in. */
export const ANSWER: AnswerWords = ENGLISH_ANSWER;
