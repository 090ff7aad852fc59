import { expect, it } from 'vitest';
import { staysOf } from '../../../../server/core/gaps/course/stays.ts';
import { settleTrip } from '../../../../server/core/trip/settle-trip.ts';
import { equatorDocument } from '../../../helpers/analyse-input.ts';
import { routeOfDocument } from '../../route/lines.ts';

it('a stay past the end is told with where it was wanted, and counted just before the end', () => {
  const route = routeOfDocument(equatorDocument(100));
  const { trip } = settleTrip({
    stays: [
      { atKm: 50, days: 1 },
      { atKm: 150, days: 2 },
    ],
  });
  const { stays, cautions } = staysOf(route, trip, []);
  expect(cautions).toEqual([
    { code: 'stay-off-route', facts: { atM: 150_000 }, fromM: 150_000, toM: 150_000 },
  ]);
  expect(stays).toEqual([
    { atM: 50_000, days: 1 },
    { atM: expect.closeTo(route.lengthM - 0.001, 6), days: 2 },
  ]);
});
