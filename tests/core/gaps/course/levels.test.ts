import { expect, it } from 'vitest';
import { levelsOf } from '../../../../server/core/gaps/course/levels.ts';
import { wayOf } from '../../../../server/core/gaps/need.ts';
import { reckon } from '../../../../server/core/gaps/reckon.ts';
import { courseOf, EXAMPLE_RIG, passingEdge } from '../../../helpers/course.ts';

it('a way has one level at its beginning and one at each place where the level bends', () => {
  const course = courseOf({ lengthM: 300_000 });
  const levelsTo = (toM: number) => {
    const [from, to] = [passingEdge(100_000), passingEdge(toM)];
    const way = wayOf(course, from, to);
    const needL = (way.wayM * 17) / 100_000;
    return levelsOf({ course, from, to }, { departL: 50, arriveL: 50 - needL });
  };
  expect(levelsTo(200_000)).toEqual([
    { atM: 100_000, litres: 50 },
    { atM: 200_000, litres: expect.closeTo(33, 9) },
  ]);
  // Two supplies at one place: nothing goes between them.
  expect(levelsTo(100_000)).toEqual([{ atM: 100_000, litres: 50 }]);
});

it('what goes while the vehicle is filled goes where the way begins', () => {
  // 0.6 l/h for eight hours of a day: 4.8 l, half of them while half a day is spent filling. Then 17 l for 100 km.
  const rigFile = {
    ...EXAMPLE_RIG,
    fuel: { ...EXAMPLE_RIG.fuel, perHour: { heater: 0.6 }, hours: { heaterPerNight: 8 } },
  };
  const course = courseOf({ rigFile, lengthM: 300_000 });
  const [from, to] = [{ ...passingEdge(100_000), fillDays: 0.5 }, passingEdge(200_000)];
  const { needL, levels } = reckon(course, from, to, { departL: 50 });
  expect(needL).toBeCloseTo(19.4, 9);
  expect(levels).toEqual([
    { atM: 100_000, litres: 50 },
    { atM: 100_000, litres: expect.closeTo(47.6, 9) },
    { atM: 200_000, litres: expect.closeTo(30.6, 9) },
  ]);
});
