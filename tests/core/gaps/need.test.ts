import { expect, it } from 'vitest';
import { wayOf } from '../../../server/core/gaps/need.ts';
import { courseOf, endEdge, passingEdge } from '../../helpers/course.ts';

it('a way is made of the route, the ways from and to supplies, past the end, and the allowance', () => {
  const course = courseOf({ lengthM: 200_000, allowanceFactor: 1.1, onward: { km: 30, hours: 0 } });
  const { terms } = wayOf(course, passingEdge(100_000, 2000), endEdge(200_000), 5000);
  expect(terms.map(({ label, value }) => [label, Math.round(value)])).toEqual([
    [{ phrase: 'along-the-route', facts: {} }, 100_000],
    [{ phrase: 'back-to-the-route', facts: {} }, 2000],
    [{ phrase: 'failing-supply-and-back', facts: {} }, 5000],
    [{ phrase: 'past-the-end', facts: {} }, 30_000],
    [{ phrase: 'allowance-for-bends', facts: { straightLines: false } }, 13_700],
  ]);
});
