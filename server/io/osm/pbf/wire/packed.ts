import { PBF_LIST_MAX } from '../../source/limits.ts';
import { BrokenBlock } from './broken.ts';
import { Cursor, type Range } from './cursor.ts';

// Bytes past the end of the file's block are read as 0 here; the position, looked at in the end, tells of it.
const TOO_LONG = 'a list of numbers that runs past its end';
const TOO_SHORT = 'a list with fewer numbers than there are nodes';

/**
 * The running sums of a packed list of zigzag differences, written to `into` (which must have room for one value a
 * byte). Gives their number.
 */
export function decodeDeltas(bytes: Uint8Array, range: Range, into: Float64Array): number {
  const { end } = range;
  let position = range.start;
  let value = 0;
  let count = 0;
  while (position < end) {
    let raw = bytes[position++] ?? 0;
    if (raw > 127) {
      const second = bytes[position++] ?? 0;
      raw = (raw & 127) | ((second & 127) << 7);
      if (second > 127) {
        const third = bytes[position++] ?? 0;
        raw |= (third & 127) << 14;
        if (third > 127) {
          const fourth = bytes[position++] ?? 0;
          raw |= (fourth & 127) << 21;
          if (fourth > 127) {
            const cursor = new Cursor(bytes, position - 4, end);
            value += cursor.signed();
            position = cursor.position;
            into[count++] = value;
            continue;
          }
        }
      }
    }
    value += (raw >>> 1) ^ -(raw & 1);
    into[count++] = value;
  }
  if (position > end) throw new BrokenBlock(TOO_LONG);
  return count;
}

/**
 * Running sums of a packed list of zigzag differences at ascending `places` only. Stops reading behind the last one.
 */
export function sumsAt(bytes: Uint8Array, range: Range, places: readonly number[]): Float64Array {
  const sums = new Float64Array(places.length);
  const { end } = range;
  let position = range.start;
  let value = 0;
  let at = -1;
  let index = 0;
  for (const place of places) {
    while (at < place) {
      if (position >= end) throw new BrokenBlock(TOO_SHORT);
      let raw = bytes[position++] ?? 0;
      if (raw > 127) {
        const second = bytes[position++] ?? 0;
        raw = (raw & 127) | ((second & 127) << 7);
        if (second > 127) {
          const third = bytes[position++] ?? 0;
          raw |= (third & 127) << 14;
          if (third > 127) {
            const cursor = new Cursor(bytes, position - 3, end);
            value += cursor.signed();
            position = cursor.position;
            at += 1;
            continue;
          }
        }
      }
      value += (raw >>> 1) ^ -(raw & 1);
      at += 1;
    }
    sums[index++] = value;
  }
  if (position > end) throw new BrokenBlock(TOO_LONG);
  return sums;
}

/** Plain integers of a packed list at ascending `places` only. Stops reading behind the last one. */
export function integersAt(bytes: Uint8Array, range: Range, places: readonly number[]): Float64Array {
  const values = new Float64Array(places.length);
  const cursor = new Cursor(bytes, range.start, range.end);
  let position = range.start;
  let at = 0;
  let index = 0;
  for (const place of places) {
    for (; at < place; at += 1) while (position < range.end && (bytes[position++] ?? 0) > 127);
    cursor.enter(position, range.end);
    values[index++] = cursor.integer();
    position = cursor.position;
    at += 1;
  }
  return values;
}

/** A number takes ten bytes at the most. */
const NUMBER_BYTES_MAX = 10;

/** Refuses a list of one object that is longer than any real one, before it is read. */
export function holdLength({ start, end }: Range): void {
  if (end - start > PBF_LIST_MAX * NUMBER_BYTES_MAX)
    throw new BrokenBlock(
      `an object with a list of ${end - start} bytes, for at most ${PBF_LIST_MAX} numbers`,
    );
}

/** All the plain integers of a packed list. */
export function decodeIntegers(bytes: Uint8Array, range: Range): number[] {
  holdLength(range);
  const cursor = new Cursor(bytes, range.start, range.end);
  const values: number[] = [];
  while (cursor.position < range.end) values.push(cursor.integer());
  return values;
}

/** All the running sums of a packed list of zigzag differences, as a plain array. */
export function decodeSums(bytes: Uint8Array, range: Range): number[] {
  holdLength(range);
  const cursor = new Cursor(bytes, range.start, range.end);
  const values: number[] = [];
  let value = 0;
  while (cursor.position < range.end) {
    value += cursor.signed();
    values.push(value);
  }
  return values;
}
