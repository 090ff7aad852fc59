import { at } from './at.ts';

/** Each entry of a list with the one behind it. */
export const pairsOf = <T>(list: readonly T[]): [T, T][] =>
  list.slice(1).map((after, index) => [at(list, index), after]);
