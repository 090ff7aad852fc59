import { expect, it } from 'vitest';
import { containersAlong } from '../../../../server/core/plan/drive/containers.ts';

it('a can that is poured on the way has a level just before the pour and one just after', () => {
  // A full tank of 10 l and a can of 5 l; 10 l go in 100 m: the tank has room for the can half way.
  const points = [
    { atM: 0, litres: 15 },
    { atM: 100, litres: 5 },
  ];
  expect(containersAlong(points, { capacityL: 10, tankL: 10, canL: 5, cans: 1 })).toEqual({
    levels: [
      { atM: 0, tankL: 10, cansL: [5] },
      { atM: 50, tankL: 5, cansL: [5] },
      { atM: 50, tankL: 10, cansL: [0] },
      { atM: 100, tankL: 5, cansL: [0] },
    ],
    poursM: [50],
  });
});

it('a can that the tanks have room for on leaving is poured there, with one level after it', () => {
  const points = [
    { atM: 0, litres: 10 },
    { atM: 100, litres: 5 },
  ];
  expect(containersAlong(points, { capacityL: 10, tankL: 5, canL: 5, cans: 1 }).levels).toEqual([
    { atM: 0, tankL: 10, cansL: [0] },
    { atM: 0, tankL: 10, cansL: [0] },
    { atM: 100, tankL: 5, cansL: [0] },
  ]);
});
