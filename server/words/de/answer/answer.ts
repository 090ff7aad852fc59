import type { AnswerWords } from '../../en/answer/answer.ts';
import { NAME_WORDS } from './names.ts';
import { SAID_WORDS } from './said.ts';
import { TODO_WORDS } from './todo.ts';

/** The sentences on top of an answer, in German. */
export const GERMAN_ANSWER = {
  names: NAME_WORDS,
  said: SAID_WORDS,
  todo: TODO_WORDS,
} satisfies AnswerWords;
