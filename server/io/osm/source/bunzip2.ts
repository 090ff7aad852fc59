/// <reference path="./unbzip2-stream.d.ts" />
import { setFlagsFromString } from 'node:v8';
import bitIterator, { type BitReader } from 'unbzip2-stream/lib/bit_iterator.js';
import bzip2 from 'unbzip2-stream/lib/bzip2.js';
import { InputProblem } from '../../../core/input/problem.ts';
import type { ExpansionGuard } from './expansion-guard.ts';
import { READ_CHUNK_BYTES } from './limits.ts';

const brokenBzip2 = (source: string, packedBytes: number) =>
  new InputProblem({
    code: 'bzip2-broken',
    source,
    place: `byte ${packedBytes}`,
    came: 'the bzip2 data ends too early or is damaged',
    expected: 'a whole bzip2 file',
    remedy: 'Download it again',
  });

const BYTES_A_SIZE = 100_000;
/** A block is unpacked once so many packed bytes are there beyond its own size: as many as it can take. */
const BLOCK_MARGIN_BYTES = 25_000;
const HEADER_BYTES = 4;

/** Unpacks blocks, and gives what comes of them in pieces that the guard has let pass: a block may be of fifty times its size. */
class Blocks {
  readonly pieces: Buffer[] = [];
  readonly #guard: ExpansionGuard;
  readonly #packed: Uint8Array[] = [];
  #packedBytes = 0;
  #bits: BitReader | null = null;
  /** In hundred thousands of bytes; 0 where a stream is to begin. */
  #size = 0;
  #checksum: number | null = null;
  #piece = Buffer.allocUnsafe(READ_CHUNK_BYTES);
  #filled = 0;

  constructor(guard: ExpansionGuard) {
    this.#guard = guard;
  }

  take(packed: Uint8Array): void {
    this.#packed.push(packed);
    this.#packedBytes += packed.length;
    this.#bits ??= bitIterator(() => this.#packed.shift());
    const enough = () => (this.#size === 0 ? HEADER_BYTES : BLOCK_MARGIN_BYTES + BYTES_A_SIZE * this.#size);
    while (this.#packedBytes - this.#bits.bytesRead + 1 >= enough()) this.#next(this.#bits);
  }

  end(): void {
    const bits = this.#bits;
    while (bits !== null && this.#packedBytes > bits.bytesRead) this.#next(bits);
    if (this.#checksum !== null) throw new Error('a stream without its end');
  }

  #next(bits: BitReader): void {
    if (this.#size === 0) {
      this.#size = bzip2.header(bits);
      this.#checksum = 0;
      return;
    }
    const bytes = BYTES_A_SIZE * this.#size;
    this.#checksum = bzip2.decompress(
      bits,
      (byte) => this.#give(byte),
      new Int32Array(bytes),
      bytes,
      this.#checksum,
    );
    this.#flush();
    if (this.#checksum === null) this.#size = 0;
  }

  #give(byte: number): void {
    this.#piece[this.#filled] = byte;
    this.#filled += 1;
    if (this.#filled === this.#piece.length) this.#flush();
  }

  #flush(): void {
    if (this.#filled === 0) return;
    this.#guard.giveOut(this.#filled);
    this.pieces.push(this.#piece.subarray(0, this.#filled));
    this.#piece = Buffer.allocUnsafe(READ_CHUNK_BYTES);
    this.#filled = 0;
  }
}

/**
 * Unpacks bzip2 piece by piece, several streams one behind the other too (as parallel packers write them); the
 * library checks the CRC of each block and stream.
 * Throws InputProblem: `bzip2-broken` for a cut or damaged file, `expands-too-far` by the guard.
 */
export async function* bunzip2(
  packed: AsyncGenerator<Buffer>,
  source: string,
  guard: ExpansionGuard,
): AsyncGenerator<Buffer> {
  // Code made small, as the command line has it, unpacks at a third of the speed.
  setFlagsFromString('--no-optimize-for-size');
  const blocks = new Blocks(guard);
  let packedBytes = 0;
  const unpack = (work: () => void): void => {
    try {
      work();
    } catch (error) {
      // The library throws errors of its own, and the engine's where it reads past the end.
      throw error instanceof InputProblem ? error : brokenBzip2(source, packedBytes);
    }
  };
  for await (const piece of packed) {
    guard.takeIn(piece.length);
    packedBytes += piece.length;
    unpack(() => blocks.take(piece));
    yield* blocks.pieces.splice(0);
  }
  unpack(() => blocks.end());
  yield* blocks.pieces.splice(0);
}
