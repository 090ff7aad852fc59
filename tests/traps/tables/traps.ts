import { CONTENTS } from './contents.ts';
import { HOURS_TRAPS } from './hours.ts';
import { NOT_FOR_CARS } from './not-for-cars.ts';
import { OUT_OF_USE } from './out-of-use.ts';
import { SPELLINGS } from './spellings.ts';
import type { Trap } from './trap.ts';
import { WORDS } from './words.ts';

/** Every trap: one mapped object each that may falsely look like a supply, or falsely like none. */
export const TRAPS: readonly Trap[] = [
  ...OUT_OF_USE,
  ...NOT_FOR_CARS,
  ...SPELLINGS,
  ...CONTENTS,
  ...WORDS,
  ...HOURS_TRAPS,
];
