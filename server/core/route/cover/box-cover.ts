import type { Bbox, Commodity } from '../../../contract/common.ts';
import type { CoverArea } from '../../input/sources.ts';

type Ring = [number, number][];

/** A box as closed rings, anticlockwise; two when it crosses the 180th meridian (west > east). */
export function ringsOfBox([west, south, east, north]: Bbox): Ring[] {
  if (west > east)
    return [...ringsOfBox([west, south, 180, north]), ...ringsOfBox([-180, south, east, north])];
  return [
    [
      [west, south],
      [east, south],
      [east, north],
      [west, north],
      [west, south],
    ],
  ];
}

/** Areas that the user vouches for. */
export function coverOfUser(boxes: readonly { commodity: Commodity; bbox: Bbox }[]): CoverArea[] {
  return boxes.map(({ commodity, bbox }) => ({
    commodity,
    rings: ringsOfBox(bbox),
    guessed: false,
    source: 'your trip',
  }));
}
