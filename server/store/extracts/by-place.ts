import type { BoxedRow } from '../port/port.ts';

/** Steps along each side of the world: two bytes, some 600 m. */
const STEPS = 1 << 16;

/** Bits with a gap before each: 0b11 becomes 0b0101. */
function spread(step: number): number {
  let bits = step;
  bits = (bits | (bits << 8)) & 0x00ff00ff;
  bits = (bits | (bits << 4)) & 0x0f0f0f0f;
  bits = (bits | (bits << 2)) & 0x33333333;
  return (bits | (bits << 1)) & 0x55555555;
}

const step = (share: number): number => Math.min(STEPS - 1, Math.max(0, Math.floor(share * STEPS)));

/** Where a box begins on a line that runs through the world in Z after Z: what is near on it is near on the ground. */
function keyOf({ box: [west, south] }: BoxedRow): number {
  const [x, y] = [spread(step((west + 180) / 360)), spread(step((south + 90) / 180))];
  // The sign bit of a 32-bit integer counts as any other.
  return (x | (y << 1)) >>> 0;
}

/** Rows so that neighbours come one after the other: an index of places takes them in half the time then. */
export function byPlace(rows: readonly BoxedRow[]): BoxedRow[] {
  return rows
    .map((row) => ({ row, key: keyOf(row) }))
    .sort((a, b) => a.key - b.key)
    .map(({ row }) => row);
}
