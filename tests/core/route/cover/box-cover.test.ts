import { expect, it } from 'vitest';
import { coverOfUser, ringsOfBox } from '../../../../server/core/route/cover/box-cover.ts';

it('a box is a closed ring, anticlockwise', () => {
  expect(ringsOfBox([10, -5, 12, -3])).toEqual([
    [
      [10, -5],
      [12, -5],
      [12, -3],
      [10, -3],
      [10, -5],
    ],
  ]);
});

it('a box over the 180th meridian that the user vouches for covers both sides of it', () => {
  const [area] = coverOfUser([{ commodity: 'water', bbox: [178, -20, -179, -10] }]);
  expect(area).toMatchObject({ commodity: 'water', guessed: false });
  expect(area?.rings).toEqual([
    [
      [178, -20],
      [180, -20],
      [180, -10],
      [178, -10],
      [178, -20],
    ],
    [
      [-180, -20],
      [-179, -20],
      [-179, -10],
      [-180, -10],
      [-180, -20],
    ],
  ]);
});
