import { expect, it } from 'vitest';
import { nightsAt } from '../../../../server/core/fuel/course/fuel-facts.ts';

it('a heater burns one night where a day ends, as many as its days at a camp, and those of a stay', () => {
  const nights = nightsAt(
    [
      { atM: 100, from: 'pace' },
      { atM: 200, from: 'camp' },
    ],
    { campDays: 2.5, stays: [{ atM: 300, days: 1.5 }] as never },
  );
  expect(nights).toEqual([
    { atM: 100, nights: 1 },
    { atM: 200, nights: 3 },
    { atM: 300, nights: 2 },
  ]);
});
