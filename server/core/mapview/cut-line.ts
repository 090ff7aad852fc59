import type { DrawnLine } from './simplify-line.ts';

/** Six decimals of a degree are about 0.1 m. */
const DECIMALS = 1e6;
export const roundDegrees = (degrees: number): number => Math.round(degrees * DECIMALS) / DECIMALS;

/** The stretch of a drawn line between two places of the route, metres along, its cut ends interpolated: at least two positions. */
export function cutLine(line: DrawnLine, fromM: number, toM: number): [number, number][] {
  const positions: [number, number][] = [positionAt(line, fromM)];
  for (let i = firstAbove(line.atM, fromM); i < line.atM.length && line.atM[i]! < toM; i += 1) {
    positions.push([roundDegrees(line.lon[i]!), roundDegrees(line.lat[i]!)]);
  }
  positions.push(positionAt(line, toM));
  return positions;
}

function positionAt(line: DrawnLine, atM: number): [number, number] {
  const last = line.atM.length - 1;
  const upper = Math.min(last, Math.max(1, firstAbove(line.atM, atM)));
  const lower = Math.max(0, upper - 1);
  const step = line.atM[upper]! - line.atM[lower]!;
  const share = step > 0 ? Math.min(1, Math.max(0, (atM - line.atM[lower]!) / step)) : 0;
  return [
    roundDegrees(line.lon[lower]! + share * (line.lon[upper]! - line.lon[lower]!)),
    roundDegrees(line.lat[lower]! + share * (line.lat[upper]! - line.lat[lower]!)),
  ];
}

/** Index of the first value above `bound` in an ascending list. */
function firstAbove(values: Float64Array, bound: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle]! > bound) high = middle;
    else low = middle + 1;
  }
  return low;
}
