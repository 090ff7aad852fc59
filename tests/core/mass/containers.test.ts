import { describe, expect, it } from 'vitest';
import { bendsOf, containersOf, sharesOf, tanksOf } from '../../../server/core/mass/containers.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';

/** Tanks of 87 (90 but for 3 that cannot be drawn), 40 and 20 l. */
const rig = {
  ...EXAMPLE_RIG,
  fuel: {
    ...EXAMPLE_RIG.fuel,
    tanks: [
      { name: 'first', litres: 90, unusableLitres: 3 },
      { name: 'second', litres: 40 },
      { name: 'third', litres: 20 },
    ],
  },
};
const tanks = tanksOf({ containers: containersOf(rig, { fuel: 0, water: 0 }) }, 'fuel');

describe('tanks that empty one after the other', () => {
  it('from the first: it runs empty where the other two are full, the second where the third is', () => {
    expect(bendsOf(tanks, 'first-first')).toEqual([0, 20, 60]);
    expect(sharesOf(tanks, 60, 'first-first')).toEqual([0, 40, 20]);
    expect(sharesOf(tanks, 100, 'first-first')).toEqual([40, 40, 20]);
    expect(sharesOf(tanks, 15, 'first-first')).toEqual([0, 0, 15]);
  });

  it('from the last: the other way round', () => {
    expect(bendsOf(tanks, 'last-first')).toEqual([0, 87, 127]);
    expect(sharesOf(tanks, 127, 'last-first')).toEqual([87, 40, 0]);
    expect(sharesOf(tanks, 100, 'last-first')).toEqual([87, 13, 0]);
  });
});

it('tanks that empty together hold alike of what each can', () => {
  expect(bendsOf(tanks, 'together')).toEqual([0]);
  expect(sharesOf(tanks, 73.5, 'together')).toEqual([43.5, 20, 10]);
});
