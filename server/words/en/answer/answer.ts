import { NAME_WORDS } from './names.ts';
import { SAID_WORDS } from './said.ts';
import { TODO_WORDS } from './todo.ts';

/** The sentences on top of an answer, in English. */
export const ENGLISH_ANSWER = {
  names: NAME_WORDS,
  said: SAID_WORDS,
  todo: TODO_WORDS,
};

/** What another language has to have of them. */
export type AnswerWords = typeof ENGLISH_ANSWER;
