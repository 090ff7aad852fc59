import { numberAt } from '../lists/at.ts';
import type { DrawnLine } from './simplify-line.ts';

/** Six decimals of a degree are about 0.1 m. */
const DECIMALS = 1e6;
export const roundDegrees = (degrees: number): number => Math.round(degrees * DECIMALS) / DECIMALS;

/** The stretch of a drawn line between two places of the route, metres along, its cut ends interpolated: at least two positions. */
export function cutLine(line: DrawnLine, fromM: number, toM: number): [number, number][] {
  const positions: [number, number][] = [positionAt(line, fromM)];
  for (let i = firstAbove(line.atM, fromM); i < line.atM.length && numberAt(line.atM, i) < toM; i += 1) {
    positions.push([roundDegrees(numberAt(line.lon, i)), roundDegrees(numberAt(line.lat, i))]);
  }
  positions.push(positionAt(line, toM));
  return positions;
}

function positionAt(line: DrawnLine, atM: number): [number, number] {
  const last = line.atM.length - 1;
  const upper = Math.min(last, Math.max(1, firstAbove(line.atM, atM)));
  const lower = Math.max(0, upper - 1);
  const step = numberAt(line.atM, upper) - numberAt(line.atM, lower);
  const share = step > 0 ? Math.min(1, Math.max(0, (atM - numberAt(line.atM, lower)) / step)) : 0;
  return [
    roundDegrees(numberAt(line.lon, lower) + share * (numberAt(line.lon, upper) - numberAt(line.lon, lower))),
    roundDegrees(numberAt(line.lat, lower) + share * (numberAt(line.lat, upper) - numberAt(line.lat, lower))),
  ];
}

/** Index of the first value above `bound` in an ascending list. */
function firstAbove(values: Float64Array, bound: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (numberAt(values, middle) > bound) high = middle;
    else low = middle + 1;
  }
  return low;
}
