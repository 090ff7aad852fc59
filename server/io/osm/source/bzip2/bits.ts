import { BrokenBzip2 } from './broken.ts';

/** Bits of the bytes that were added, the highest of each byte first. Throws BrokenBzip2 where there are no more. */
export class Bits {
  #bytes: Buffer = Buffer.alloc(0);
  #at = 0;
  /** The last bits of bytes begun, `#left` of them still to be taken. */
  #begun = 0;
  #left = 0;

  add(bytes: Buffer): void {
    this.#bytes = Buffer.concat([this.#bytes.subarray(this.#at), bytes]);
    this.#at = 0;
  }

  /** Bytes of which no bit was taken. */
  get wholeBytes(): number {
    return this.#bytes.length - this.#at + (this.#left >> 3);
  }

  /** The next bits as a number: at most 24. */
  take(bits: number): number {
    while (this.#left < bits) {
      const byte = this.#bytes[this.#at];
      if (byte === undefined) throw new BrokenBzip2('it ends too early');
      this.#at += 1;
      this.#begun = (this.#begun << 8) | byte;
      this.#left += 8;
    }
    this.#left -= bits;
    return (this.#begun >>> this.#left) & ((1 << bits) - 1);
  }

  /** The next 32 bits, signed as those of a CRC. */
  take32(): number {
    return (this.take(16) << 16) | this.take(16);
  }

  /** Leaves what is left of a byte. */
  toNextByte(): void {
    this.#left -= this.#left & 7;
  }
}
