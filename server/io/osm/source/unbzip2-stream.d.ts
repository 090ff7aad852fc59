declare module 'unbzip2-stream/lib/bit_iterator.js' {
  /** Reads so many bits of the pieces that `nextPiece` gives. */
  export interface BitReader {
    (bits: number | null): number;
    readonly bytesRead: number;
  }
  export default function bitIterator(nextPiece: () => Uint8Array | undefined): BitReader;
}

declare module 'unbzip2-stream/lib/bzip2.js' {
  import type { BitReader } from 'unbzip2-stream/lib/bit_iterator.js';

  const bzip2: {
    /** The size of a stream's blocks, in hundred thousands of bytes. */
    header(bits: BitReader): number;
    /** Unpacks a block byte by byte; the stream's checksum until then, null behind its last block. */
    decompress(
      bits: BitReader,
      give: (byte: number) => void,
      block: Int32Array,
      blockBytes: number,
      checksum: number | null,
    ): number | null;
  };
  export default bzip2;
}
