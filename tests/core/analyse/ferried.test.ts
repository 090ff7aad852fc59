import { describe, expect, it } from 'vitest';
import { ferryAssumptions, settledAboard, withoutFerries } from '../../../server/core/analyse/ferried.ts';
import { amountBetween } from '../../../server/core/gaps/course/profile.ts';
import type { RouteLine } from '../../../server/core/route/route-line.ts';
import { equatorLon } from '../../helpers/analyse-input.ts';
import { courseOf } from '../../helpers/course.ts';
import { routeThrough } from '../route/lines.ts';

const ferry = (fromM: number, toM: number, isMapped = true) => ({
  fromM,
  toM,
  id: 'way/7',
  name: 'Long water',
  hours: 3,
  isMapped,
});
const LINE = routeThrough([
  [0, 0],
  [equatorLon(100), 0],
]);
const route: RouteLine = { ...LINE, ferries: [ferry(20_000, 30_000), ferry(60_000, 70_000)] };

describe('a course of fuel with ferries', () => {
  const even = courseOf({ lengthM: LINE.lengthM });
  const course = withoutFerries(even, route);

  it('burns nothing aboard, and all of it ashore', () => {
    expect(amountBetween(course.litres.out, 20_000, 30_000)).toBe(0);
    expect(amountBetween(course.litres.out, 0, 100_000)).toBeCloseTo(80 * 0.17, 6);
    expect(amountBetween(course.wayM, 25_000, 65_000)).toBeCloseTo(30_000, 6);
  });

  it.each([
    [
      'over both',
      0,
      100_000,
      [
        [0, 20_000],
        [30_000, 60_000],
        [70_000, 100_000],
      ],
    ],
    ['from within one', 25_000, 40_000, [[30_000, 40_000]]],
    ['to within one', 10_000, 25_000, [[10_000, 20_000]]],
    ['aboard', 21_000, 29_000, []],
    ['between them', 35_000, 45_000, [[35_000, 45_000]]],
  ])('explains a way %s by its stretches ashore', (_, fromM, toM, ashore) => {
    const asked: [number, number][] = [];
    const explain = (from: number, to: number) => {
      asked.push([from, to]);
      return [];
    };
    withoutFerries({ ...even, explain }, route).explain(fromM, toM);
    expect(asked).toEqual(ashore);
  });
});

describe('ferries of a route', () => {
  it('whose hours nobody mapped are assumed to be slow, and said to be', () => {
    const crossings = [ferry(20_000, 30_000), ferry(60_000, 70_000, false)];
    expect(ferryAssumptions({ ...LINE, ferries: crossings })).toEqual([
      {
        path: '/map/way/7/duration',
        value: { phrase: 'hours', facts: { hours: 3 } },
        why: { phrase: 'slow-ferry', facts: { kmPerHour: 10 } },
      },
    ]);
    expect(ferryAssumptions(LINE)).toEqual([]);
  });

  it('are stays of their hours, in their middle', () => {
    const settled = { trip: { stays: [] } } as unknown as Parameters<typeof settledAboard>[0];
    expect(settledAboard(settled, route).trip.stays).toEqual([
      { atM: 25_000, days: 3 / 24, name: 'Long water' },
      { atM: 65_000, days: 3 / 24, name: 'Long water' },
    ]);
    expect(settledAboard(settled, LINE)).toBe(settled);
  });
});
