import { expect, it } from 'vitest';
import { levelsOf } from '../../../server/core/gaps/levels.ts';
import { wayOf } from '../../../server/core/gaps/need.ts';
import { courseOf, passingEdge } from '../../helpers/course.ts';

it('a way has one level at its beginning and one at each place where the level bends', () => {
  const course = courseOf({ lengthM: 300_000 });
  const levelsTo = (toM: number) => {
    const [from, to] = [passingEdge(100_000), passingEdge(toM)];
    const way = wayOf(course, from, to);
    const needL = (way.wayM * 17) / 100_000;
    return levelsOf({ course, from, to }, { way, needL, departL: 50, arriveL: 50 - needL });
  };
  expect(levelsTo(200_000)).toEqual([
    { atM: 100_000, litres: 50 },
    { atM: 200_000, litres: expect.closeTo(33, 9) },
  ]);
  // Two supplies at one place: nothing goes between them.
  expect(levelsTo(100_000)).toEqual([{ atM: 100_000, litres: 50 }]);
});
