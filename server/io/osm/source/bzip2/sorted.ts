import type { Bits } from './bits.ts';
import { BrokenBzip2 } from './broken.ts';
import { type BlockCodes, takeSymbol } from './codes.ts';

/** Symbols written by one table. */
const GROUP = 50;
/** The first two symbols are the digits 1 and 2 of how often a byte is repeated, the lowest first. */
const LAST_DIGIT = 1;

/** A block's bytes as the sort left them; each element comes to hold the place of the one that follows it as well. */
export class Sorted {
  readonly elements: Uint32Array;
  readonly #counts = new Uint32Array(256);
  #length = 0;

  constructor(level: number) {
    this.elements = new Uint32Array(100_000 * level);
  }

  get length(): number {
    return this.#length;
  }

  /** Reads the bytes that were used in a block, moved to the front each time they came. */
  read(bits: Bits, codes: BlockCodes, used: Uint8Array): void {
    this.#counts.fill(0);
    this.#length = 0;
    const end = used.length + 1;
    const latest = Uint8Array.from(used);
    let repeats = 0;
    let weight = 1;
    for (const symbol of symbolsOf(bits, codes)) {
      if (symbol <= LAST_DIGIT) {
        repeats += weight << symbol;
        weight <<= 1;
        if (repeats > this.elements.length) throw new BrokenBzip2('a block too long');
        continue;
      }
      if (repeats > 0) this.#put(latest[0] ?? 0, repeats);
      repeats = 0;
      weight = 1;
      if (symbol === end) return;
      this.#put(toFront(latest, symbol - 1), 1);
    }
    throw new BrokenBzip2('a block without an end');
  }

  /** Links the elements in the order in which they stood before the sort: place in the upper 24 bits, byte in the lower 8. */
  link(): void {
    const { elements } = this;
    const next = new Uint32Array(256);
    let sum = 0;
    for (const [byte, count] of this.#counts.entries()) {
      next[byte] = sum;
      sum += count;
    }
    for (let at = 0; at < this.#length; at += 1) {
      const byte = (elements[at] ?? 0) & 255;
      const place = next[byte] ?? 0;
      next[byte] = place + 1;
      elements[place] = (elements[place] ?? 0) | (at << 8);
    }
  }

  #put(byte: number, times: number): void {
    const end = this.#length + times;
    if (end > this.elements.length) throw new BrokenBzip2('a block too long');
    this.elements.fill(byte, this.#length, end);
    this.#counts[byte] = (this.#counts[byte] ?? 0) + times;
    this.#length = end;
  }
}

/** What is written, and whatever follows its end. */
function* symbolsOf(bits: Bits, { tables, choices }: BlockCodes): Generator<number> {
  for (const choice of choices) {
    const table = tables[choice];
    if (table === undefined) return;
    for (let left = GROUP; left > 0; left -= 1) yield takeSymbol(bits, table);
  }
}

function toFront(latest: Uint8Array, place: number): number {
  const byte = latest[place] ?? 0;
  latest.copyWithin(1, 0, place);
  latest[0] = byte;
  return byte;
}
