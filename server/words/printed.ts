import { ENGLISH_PRINTED } from './en/printed/printed.ts';

/** The words of every report that the command line prints: what another language has to have. */
export type PrintedWords = typeof ENGLISH_PRINTED;

/** Those of the language that it prints in. */
export const PRINTED: PrintedWords = ENGLISH_PRINTED;
