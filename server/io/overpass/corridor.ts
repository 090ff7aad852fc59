import { createHash } from 'node:crypto';
import type { Bbox } from '../../contract/common.ts';
import { boxesAlong } from '../../core/route/cover/boxes-along.ts';
import type { RouteLine } from '../../core/route/route-line.ts';
import type { Interpreter } from './ask.ts';
import { overpassQuery } from './query.ts';

/** Places of a degree that a box is told to: some metres. */
const STEPS = 10_000;

/** Boxes along a route, each to be asked for by itself; together they hold the corridor. */
export const corridorBoxes = (route: Pick<RouteLine, 'lon' | 'lat'>, corridorKm: number): Bbox[] =>
  boxesAlong(route, corridorKm).map(widened);

/** A box in round figures that holds another: what is asked is then to the digit what is covered. */
export function widened([west, south, east, north]: Bbox): Bbox {
  const down = (degrees: number) => Math.floor(degrees * STEPS) / STEPS;
  const up = (degrees: number) => Math.ceil(degrees * STEPS) / STEPS;
  return [
    Math.max(-180, down(west)),
    Math.max(-90, down(south)),
    Math.min(180, up(east)),
    Math.min(90, up(north)),
  ];
}

/** A box in two, across its longer side; null for one that is too small to be cut (2 km, ours). */
export function halvesOf([west, south, east, north]: Bbox): [Bbox, Bbox] | null {
  const [wide, high] = [east - west, north - south];
  if (Math.max(wide, high) < LEAST_DEG) return null;
  const at = wide > high ? (west + east) / 2 : (south + north) / 2;
  const middle = Math.round(at * STEPS) / STEPS;
  return wide > high
    ? [
        [west, south, middle, north],
        [middle, south, east, north],
      ]
    : [
        [west, south, east, middle],
        [west, middle, east, north],
      ];
}
const LEAST_DEG = 0.02;

/** Names all that would be asked of whom: what a user has seen and what is sent have the same. */
export function digestOf({ address }: Interpreter, boxes: readonly Bbox[]): string {
  const hash = createHash('sha256').update(address.href);
  for (const box of boxes) hash.update('\n').update(overpassQuery(box));
  return hash.digest('hex').slice(0, 16);
}
