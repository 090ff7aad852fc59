import { expect, it } from 'vitest';
import { stopsOf } from '../../../server/core/pace/trip-stops.ts';

it('where a camp and a stay are at one place the camp comes first, however many there are', () => {
  const places = Array.from({ length: 100 }, (_, index) => index * 1000);
  const stays = places.map((atM) => ({ atM, days: 2, name: 'stay' })).reverse();
  const camps = places.map((atM) => ({ atM, name: 'camp' }));
  const stops = stopsOf(200_000, { campDays: 0.5, stays }, camps);
  expect(stops.map(({ kind, atM, days }) => [kind, atM, days])).toEqual(
    places.flatMap((atM) => [
      ['camp', atM, 1],
      ['stay', atM, 2],
    ]),
  );
});
