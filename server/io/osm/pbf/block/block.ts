import { BrokenBlock } from '../wire/broken.ts';
import { Cursor, NOWHERE, type Range, textOf } from '../wire/cursor.ts';
import { keyFlagOf } from './key-flags.ts';

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
        if (second > 127) {
          const third = bytes[position++] ?? 0;
          key |= (third & 127) << 14;
          if (third > 127) throw new BrokenBlock('a string number beyond the table');
        }
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

/** A PrimitiveBlock with its scale; the groups are ranges of `bytes`. */
export interface Block {
  bytes: Uint8Array;
  strings: StringTable;
  groups: Range[];
  /** Nanodegrees per stored unit, and what is added. */
  granularity: number;
  latOffset: number;
  lonOffset: number;
  /** Milliseconds per stored unit of time. */
  dateGranularity: number;
}

/**
 * Opens a block; its string table is valid until the next one is opened.
 *
 * @throws BrokenBlock
 */
export function openBlock(bytes: Uint8Array): Block {
  const cursor = new Cursor(bytes);
  let table: Range = NOWHERE;
  const groups: Range[] = [];
  let granularity = 100;
  let latOffset = 0;
  let lonOffset = 0;
  let dateGranularity = 1000;
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    if (tag === 10) table = cursor.onlyRange(table);
    else if (tag === 18) groups.push(cursor.range());
    else if (tag === 136) granularity = cursor.integer();
    else if (tag === 144) dateGranularity = cursor.integer();
    else if (tag === 152) latOffset = cursor.integer();
    else if (tag === 160) lonOffset = cursor.integer();
    else cursor.skip(tag);
  }
  if (granularity <= 0 || dateGranularity <= 0) throw new BrokenBlock('a scale that is not positive');
  const strings = new StringTable(bytes, table);
  return { bytes, strings, groups, granularity, latOffset, lonOffset, dateGranularity };
}

/** Degrees of a stored latitude; sums in whole nanodegrees first, so that 7 decimal places come out exactly. */
export const latOf = (block: Block, stored: number): number =>
  (block.latOffset + block.granularity * stored) / 1e9;

/** Degrees of a stored longitude. */
export const lonOf = (block: Block, stored: number): number =>
  (block.lonOffset + block.granularity * stored) / 1e9;
