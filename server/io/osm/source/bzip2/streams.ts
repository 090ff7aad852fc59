import { Bits } from './bits.ts';
import { readBlock } from './block.ts';
import { BrokenBzip2 } from './broken.ts';
import { crcWithBlock } from './crc.ts';
import { Sorted } from './sorted.ts';

/** "BZh", and the decimals of pi and of its root that mark a block and the end of a stream, 24 bits at a time. */
const STREAM = 0x425a68;
const BLOCK = [0x314159, 0x265359] as const;
const END = [0x177245, 0x385090] as const;
/** A block of incompressible bytes is a hundredth longer packed than not, and 600 bytes (the manual of bzip2). */
const packedBlockMax = (level: number): number => 25_000 + 100_000 * level;

interface Stream {
  sorted: Sorted;
  crc: number;
}

/** Unpacks bzip2 streams one behind the other. Throws BrokenBzip2. */
export class Bzip2Streams {
  readonly #bits = new Bits();
  readonly #onPiece: (bytes: number) => void;
  #waiting: Buffer[] = [];
  #waitingBytes = 0;
  #level = 0;
  #stream: Stream | null = null;

  /** `onPiece` is told of bytes as they come out of a block. */
  constructor(onPiece: (bytes: number) => void) {
    this.#onPiece = onPiece;
  }

  /** What these bytes complete. */
  *add(packed: Buffer): Generator<Buffer> {
    this.#waiting.push(packed);
    this.#waitingBytes += packed.length;
    while (this.#bits.wholeBytes + this.#waitingBytes >= packedBlockMax(this.#level)) {
      this.#pour();
      yield* this.#step();
    }
  }

  /** What is left. */
  *end(): Generator<Buffer> {
    this.#pour();
    while (this.#bits.wholeBytes > 0) yield* this.#step();
    if (this.#stream !== null) throw new BrokenBzip2('it ends too early');
  }

  #pour(): void {
    if (this.#waiting.length > 0) this.#bits.add(Buffer.concat(this.#waiting));
    this.#waiting = [];
    this.#waitingBytes = 0;
  }

  /** The head of a stream, a block, or a stream's end. */
  #step(): readonly Buffer[] {
    const bits = this.#bits;
    if (this.#stream === null) {
      this.#stream = this.#begin();
      return [];
    }
    const mark = [bits.take(24), bits.take(24)];
    if (mark.every((part, place) => part === BLOCK[place])) {
      const { pieces, crc } = readBlock(bits, this.#stream.sorted, this.#onPiece);
      this.#stream.crc = crcWithBlock(this.#stream.crc, crc);
      return pieces;
    }
    if (!mark.every((part, place) => part === END[place]))
      throw new BrokenBzip2('neither a block nor an end');
    if (bits.take32() !== this.#stream.crc) throw new BrokenBzip2('a stream with another CRC');
    bits.toNextByte();
    this.#stream = null;
    this.#level = 0;
    return [];
  }

  #begin(): Stream {
    if (this.#bits.take(24) !== STREAM) throw new BrokenBzip2('no bzip2');
    this.#level = this.#bits.take(8) - '0'.charCodeAt(0);
    if (this.#level < 1 || this.#level > 9) throw new BrokenBzip2('a size of blocks that cannot be');
    return { sorted: new Sorted(this.#level), crc: 0 };
  }
}
