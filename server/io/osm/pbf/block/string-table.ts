import { BrokenBlock } from '../wire/broken.ts';
import { Cursor, type Range, textOf } from '../wire/cursor.ts';
import { keyFlagOf } from './key-flags.ts';

/** Stands for a string's number of more than three bytes: no table of a writer is that long. */
const BEYOND_ALL_STRINGS = 0x7fff_ffff;

/** A string's number by its first 14 bits and its third byte. */
export const longNumber = (low: number, third: number): number =>
  third > 127 ? BEYOND_ALL_STRINGS : low | (third << 14);

/** Strings of one block, not decoded until asked for. */
export class StringTable {
  readonly count: number;
  /** Marks of each string, see key-flags.ts. */
  readonly flags: Uint8Array;
  /** Every mark that occurs. */
  readonly anyFlag: number;
  #bytes: Uint8Array;
  #ends: Int32Array<ArrayBuffer>;
  #starts: Int32Array<ArrayBuffer>;
  #texts: (string | undefined)[] = [];

  constructor(bytes: Uint8Array, range: Range) {
    this.#bytes = bytes;
    const cursor = new Cursor(bytes, range.start, range.end);
    const most = (range.end - range.start) >> 1;
    this.#starts = roomFor(scratch.starts, most);
    this.#ends = roomFor(scratch.ends, most);
    scratch.starts = this.#starts;
    scratch.ends = this.#ends;
    if (scratch.flags.length < most) scratch.flags = new Uint8Array(most);
    this.flags = scratch.flags;
    let count = 0;
    let anyFlag = 0;
    for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
      if (tag !== 10) {
        cursor.skip(tag);
        continue;
      }
      const length = cursor.integer();
      const start = cursor.position;
      const end = start + length;
      if (length < 0 || end > range.end) throw new BrokenBlock('a string that runs past its table');
      cursor.position = end;
      const flag = keyFlagOf(bytes, start, end);
      this.#starts[count] = start;
      this.#ends[count] = end;
      this.flags[count] = flag;
      anyFlag |= flag;
      count += 1;
    }
    this.count = count;
    this.anyFlag = anyFlag;
  }

  /** The marks of a packed list of string numbers that stands in the same bytes; past their end it reads 0, then throws. */
  flagsOfList(start: number, end: number): number {
    const bytes = this.#bytes;
    const { flags, count } = this;
    let seen = 0;
    let position = start;
    while (position < end) {
      let key = bytes[position++] ?? 0;
      if (key > 127) {
        const second = bytes[position++] ?? 0;
        key = (key & 127) | ((second & 127) << 7);
        if (second > 127) key = longNumber(key, bytes[position++] ?? 0);
      }
      if (key >= count) throw new BrokenBlock('a string number beyond the table');
      seen |= flags[key] ?? 0;
    }
    if (position > end) throw new BrokenBlock('a list of keys that runs past its end');
    return seen;
  }

  text(index: number): string {
    const known = this.#texts[index];
    if (known !== undefined) return known;
    const start = this.#starts[index];
    const end = this.#ends[index];
    if (start === undefined || end === undefined || index >= this.count)
      throw new BrokenBlock(`a string numbered ${index} where there are ${this.count}`);
    const text = textOf(this.#bytes, start, end);
    this.#texts[index] = text;
    return text;
  }
}

/** Reused from block to block: only one block is open at a time in a thread. */
const scratch = { starts: new Int32Array(0), ends: new Int32Array(0), flags: new Uint8Array(0) };

const roomFor = (array: Int32Array<ArrayBuffer>, length: number) =>
  array.length < length ? new Int32Array(length) : array;
