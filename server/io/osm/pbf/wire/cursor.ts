import { BrokenBlock } from './broken.ts';

/** A stretch of bytes, end exclusive; start = end = 0 stands for "not there". */
export interface Range {
  start: number;
  end: number;
}

export const NOWHERE: Range = { start: 0, end: 0 };

const TWO_28 = 2 ** 28;
const TWO_56 = 2 ** 56;

/** Steps through the fields of one protobuf message. Throws BrokenBlock rather than read past its end. */
export class Cursor {
  readonly bytes: Uint8Array;
  position: number;
  end: number;

  constructor(bytes: Uint8Array, start = 0, end = bytes.length) {
    this.bytes = bytes;
    this.position = start;
    this.end = end;
  }

  /** Turns to another message of the same bytes. */
  enter(start: number, end: number): void {
    this.position = start;
    this.end = end;
  }

  /** The next field's tag: field number × 8 + wire type; 0 at the end. */
  tag(): number {
    if (this.position >= this.end) return 0;
    // Nearly all tags are of one byte; fields 1 to 15 are.
    const byte = this.bytes[this.position] ?? 0;
    if (byte < 128 && byte > 7) {
      this.position += 1;
      return byte;
    }
    const tag = this.integer();
    if (tag < 8) throw new BrokenBlock(`a field with the number ${tag >> 3}`);
    return tag;
  }

  #byte(): number {
    if (this.position >= this.end) throw new BrokenBlock('a number that runs past the end of its message');
    return this.bytes[this.position++] ?? 0;
  }

  /** int32, int64, uint32, bool, enum as a safe integer. */
  integer(): number {
    let byte = this.#byte();
    if (byte < 128) return byte;
    let low = byte & 127;
    for (let shift = 7; shift < 28; shift += 7) {
      byte = this.#byte();
      low |= (byte & 127) << shift;
      if (byte < 128) return low;
    }
    let middle = 0;
    for (let shift = 0; shift < 28; shift += 7) {
      byte = this.#byte();
      middle |= (byte & 127) << shift;
      if (byte < 128) return safe(low + middle * TWO_28);
    }
    byte = this.#byte();
    let high = byte & 127;
    if (byte > 127) {
      byte = this.#byte();
      if (byte > 127) throw new BrokenBlock('a number of more than ten bytes');
      high |= (byte & 1) << 7;
    }
    if (high < 128) return safe(low + middle * TWO_28 + high * TWO_56);
    return safe(-(TWO_28 - low + (TWO_28 - 1 - middle) * TWO_28 + (255 - high) * TWO_56));
  }

  /** sint32, sint64 as a safe integer. */
  signed(): number {
    const raw = this.integer();
    if (raw < 0) throw new BrokenBlock('a number beyond 2^53');
    return raw % 2 === 0 ? raw / 2 : -(raw + 1) / 2;
  }

  /** Moves behind a length-delimited field and gives the position where its bytes begin. */
  pass(): number {
    const length = this.integer();
    const start = this.position;
    if (length < 0 || length > this.end - start)
      throw new BrokenBlock(`a field of ${length} bytes where ${this.end - start} are left`);
    this.position = start + length;
    return start;
  }

  /** The bytes of a length-delimited field; the cursor moves behind them. */
  range(): Range {
    const start = this.pass();
    return { start, end: this.position };
  }

  /** Like `range`, for a field that may come once only. */
  onlyRange(before: Range): Range {
    if (before !== NOWHERE) throw new BrokenBlock('a list split into several pieces');
    return this.range();
  }

  text(): string {
    const { start, end } = this.range();
    return textOf(this.bytes, start, end);
  }

  /** Passes over a field of a kind that is of no concern. */
  skip(tag: number): void {
    const wireType = tag & 7;
    if (wireType === 0) this.integer();
    else if (wireType === 2) this.pass();
    else {
      const length = wireType === 1 ? 8 : wireType === 5 ? 4 : Number.NaN;
      if (!(length <= this.end - this.position)) throw new BrokenBlock(`a field of wire type ${wireType}`);
      this.position += length;
    }
  }
}

export function textOf(bytes: Uint8Array, start: number, end: number): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset + start, end - start).toString('utf8');
}

function safe(value: number): number {
  if (!Number.isSafeInteger(value)) throw new BrokenBlock('a number beyond 2^53');
  return value;
}
