import type { Bits } from './bits.ts';
import { BrokenBzip2 } from './broken.ts';
import { readCodes } from './codes.ts';
import { Outlet } from './outlet.ts';
import type { Sorted } from './sorted.ts';

/** As many of one byte in a row are followed by how many more of it there are. */
const RUN = 4;

export interface Block {
  pieces: readonly Buffer[];
  crc: number;
}

/**
 * Reads a block from behind its mark. `sorted` is room to work in, `onPiece` is told of the bytes that come out. Throws
 * BrokenBzip2, also where the CRC is another.
 */
export function readBlock(bits: Bits, sorted: Sorted, onPiece: (bytes: number) => void): Block {
  const crc = bits.take32();
  if (bits.take(1) === 1) throw new BrokenBzip2('a block of a kind that is no longer made');
  const first = bits.take(24);
  const used = readUsed(bits);
  sorted.read(bits, readCodes(bits, used.length + 2), used);
  if (first >= sorted.length) throw new BrokenBzip2('a block that begins behind its end');
  sorted.link();
  const outlet = new Outlet(onPiece);
  unwind(sorted, first, outlet);
  if (outlet.end() !== crc) throw new BrokenBzip2('a block with another CRC');
  return { pieces: outlet.pieces, crc };
}

/** The bytes that occur in the block: sixteen ranges, and for each that has any which of its sixteen. */
function readUsed(bits: Bits): Uint8Array {
  const isSet = (bitsOf16: number, place: number) => (bitsOf16 & (0x8000 >> place)) !== 0;
  const sixteen = Array.from({ length: 16 }, (_, place) => place);
  const ranges = bits.take(16);
  const used = sixteen
    .filter((range) => isSet(ranges, range))
    .flatMap((range) => {
      const inRange = bits.take(16);
      return sixteen.filter((place) => isSet(inRange, place)).map((place) => 16 * range + place);
    });
  return Uint8Array.from(used);
}

/** Follows the links from the first element and writes runs out. */
function unwind({ elements, length }: Sorted, first: number, outlet: Outlet): void {
  let at = (elements[first] ?? 0) >>> 8;
  let last = -1;
  let alike = 0;
  for (let left = length; left > 0; left -= 1) {
    const element = elements[at] ?? 0;
    const byte = element & 255;
    at = element >>> 8;
    if (alike === RUN) {
      for (let more = byte; more > 0; more -= 1) outlet.put(last);
      alike = 0;
      continue;
    }
    alike = byte === last && alike > 0 ? alike + 1 : 1;
    last = byte;
    outlet.put(byte);
  }
}
