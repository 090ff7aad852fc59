import type { PassingFilter } from './passing-filter.ts';
import type { RouteIndex } from './route-index.ts';

const AT_START = 0;
const DOWN = 1;
const UP = 2;

/**
 * Tells the filter every turning point of the distance from a place (earth-centred x, y, z) to the line over the
 * steps `first` to `last` - 1. Along one step the distance falls and then rises, so highs lie on vertices only.
 * Steps marked `unsought` are passed over: the ends of what adjoins them are lows or highs like ends of the line.
 * `toArcM` turns a chord into metres over the ground.
 */
export function tellProfile(
  index: RouteIndex,
  unsought: Uint8Array,
  first: number,
  last: number,
  x: number,
  y: number,
  z: number,
  toArcM: (chordM: number) => number,
  filter: PassingFilter,
): void {
  const { xyz, chord2 } = index;
  const away2 = (vertex: number): number => {
    const dx = xyz[3 * vertex]! - x;
    const dy = xyz[3 * vertex + 1]! - y;
    const dz = xyz[3 * vertex + 2]! - z;
    return dx * dx + dy * dy + dz * dz;
  };
  const metres = (squared: number) => toArcM(Math.sqrt(Math.max(squared, 0)));
  const endPiece = (direction: number, lastStep: number, squared: number) => {
    if (direction === DOWN) filter.low(lastStep, 1, metres(squared));
    else if (direction === UP) filter.high(metres(squared));
  };

  let direction = AT_START;
  let here2 = away2(first);
  for (let step = first; step < last; step += 1) {
    const next2 = away2(step + 1);
    if (unsought[step] === 1) {
      endPiece(direction, step - 1, here2);
      direction = AT_START;
      here2 = next2;
      continue;
    }
    const length2 = chord2[step]!;
    const drop2 = here2 - next2;
    if (length2 > 0) {
      if (drop2 >= length2) {
        if (direction !== DOWN) filter.high(metres(here2));
        direction = DOWN;
      } else if (drop2 <= -length2) {
        if (direction !== UP) filter.low(step, 0, metres(here2));
        direction = UP;
      } else {
        if (direction !== DOWN) filter.high(metres(here2));
        const share = (drop2 + length2) / (2 * length2);
        filter.low(step, share, metres(here2 - share * share * length2));
        direction = UP;
      }
    }
    here2 = next2;
  }
  endPiece(direction, last - 1, here2);
}
