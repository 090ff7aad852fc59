import { CAB_ANSWER_WORDS } from './en/cab/answer.ts';
import { CAB_SCREEN_WORDS } from './en/cab/screen.ts';

const ENGLISH_CAB = { ...CAB_SCREEN_WORDS, answer: CAB_ANSWER_WORDS };

/** The words of a file to take along: what another language has to have. */
export type CabWords = typeof ENGLISH_CAB;

/** Those of the language that it speaks. */
export const CAB: CabWords = ENGLISH_CAB;
