import { joined, type Part, type Parts, parts } from '../../parts/part.ts';

/** The first of several in a row, and how many more there are: a sentence stays one to read. */
export const few = (lists: readonly Parts[], most: number, between = ', '): Part[] =>
  joined(
    [...lists.slice(0, most), ...(lists.length > most ? [parts`${lists.length - most} weitere`] : [])],
    between,
  );
