import { Cursor, type Range } from '../wire/cursor.ts';
import type { Block } from './block.ts';

/** Fields of keys and values in the messages Way and Relation. */
const KEYS = 18;
const VALUES = 26;

/** Marks of the keys of a way or relation: 0 where it has none of those that are marked. */
export const keysOf = (block: Block, range: Range): number => marksOf(block, range, KEYS);

/** The same of the values. */
export const valuesOf = (block: Block, range: Range): number => marksOf(block, range, VALUES);

function marksOf(block: Block, range: Range, field: number): number {
  const cursor = cursorOver(block.bytes, range);
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    if (tag === field) {
      const from = cursor.pass();
      return block.strings.flagsOfList(from, cursor.position);
    }
    cursor.skip(tag);
  }
  return 0;
}

let reused = new Cursor(new Uint8Array(0));

/** One cursor for all the messages of a block, since there are millions: good until it is asked for again. */
export function cursorOver(bytes: Uint8Array, { start, end }: Range): Cursor {
  if (reused.bytes !== bytes) reused = new Cursor(bytes);
  reused.enter(start, end);
  return reused;
}
