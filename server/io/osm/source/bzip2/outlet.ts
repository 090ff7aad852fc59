import { CRC_OF_NOTHING, crcOver } from './crc.ts';

const PIECE_BYTES = 256 * 1024;

/** Gathers what a block gives, with its CRC. `onPiece` is told of each piece's bytes before there are more. */
export class Outlet {
  readonly pieces: Buffer[] = [];
  readonly #onPiece: (bytes: number) => void;
  #piece = Buffer.allocUnsafe(PIECE_BYTES);
  #length = 0;
  #crc = CRC_OF_NOTHING;

  constructor(onPiece: (bytes: number) => void) {
    this.#onPiece = onPiece;
  }

  put(byte: number): void {
    if (this.#length === PIECE_BYTES) this.#close();
    this.#piece[this.#length] = byte;
    this.#length += 1;
  }

  /** The CRC of all; nothing is put in afterwards. */
  end(): number {
    this.#close();
    return ~this.#crc;
  }

  #close(): void {
    const piece = this.#piece.subarray(0, this.#length);
    this.#onPiece(piece.length);
    this.#crc = crcOver(this.#crc, piece);
    this.pieces.push(piece);
    this.#piece = Buffer.allocUnsafe(PIECE_BYTES);
    this.#length = 0;
  }
}
