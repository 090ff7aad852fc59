/** x^32 + x^26 + x^23 + …, the highest power first, as bzip2 takes it. */
const POLYNOMIAL = 0x04c11db7;

const TABLE = Int32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte << 24;
  for (let bit = 0; bit < 8; bit += 1) rest = rest < 0 ? (rest << 1) ^ POLYNOMIAL : rest << 1;
  return rest;
});

export const CRC_OF_NOTHING = -1;

/** The CRC gone on with over these bytes; of a whole block it is taken inverted. */
export function crcOver(crc: number, bytes: Uint8Array): number {
  let rest = crc;
  for (const byte of bytes) rest = (rest << 8) ^ (TABLE[(rest >>> 24) ^ byte] ?? 0);
  return rest;
}

/** A stream's CRC with one block more. */
export const crcWithBlock = (stream: number, block: number): number =>
  ((stream << 1) | (stream >>> 31)) ^ block;
