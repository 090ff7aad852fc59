/**
 * A set of ids that threads share: it may say yes to an id that was never added, never no to one that was (a Bloom
 * filter, each id within one 32-bit word). 16 MiB hold 5 million ids with about one false yes in a hundred; an
 * overfull one says yes too often, which costs time and nothing else.
 */
export class IdFilter {
  readonly #words: Int32Array;

  constructor(memory: SharedArrayBuffer) {
    this.#words = new Int32Array(memory);
  }

  /** Bytes of the memory; a power of two. */
  static readonly BYTES = 16 * 1024 * 1024;

  add(id: number): void {
    const [word, bits] = placeOf(id, this.#words.length);
    if (((this.#words[word] ?? 0) & bits) !== bits) Atomics.or(this.#words, word, bits);
  }

  has(id: number): boolean {
    const [word, bits] = placeOf(id, this.#words.length);
    return ((this.#words[word] ?? 0) & bits) === bits;
  }
}

/** Mixing steps of MurmurHash3's 32-bit finaliser (Austin Appleby, public domain). */
function mix(value: number): number {
  let hash = value | 0;
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return hash ^ (hash >>> 16);
}

function placeOf(id: number, words: number): [word: number, bits: number] {
  const low = id | 0;
  const high = Math.floor(id / 2 ** 32) | 0;
  const first = mix(low ^ Math.imul(high, 0x9e3779b1));
  const second = mix(first ^ 0x5bd1e995);
  const bits = (1 << (second & 31)) | (1 << ((second >>> 5) & 31)) | (1 << ((second >>> 10) & 31));
  return [first & (words - 1), bits];
}
