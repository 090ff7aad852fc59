import { expect, it } from 'vitest';
import { amountBetween, evenProfile } from '../../../server/core/gaps/course/profile.ts';
import { pacePlan } from '../../../server/core/pace/pace-plan.ts';
import { pacedCourse } from '../../../server/core/pace/paced-course.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { settleTrip } from '../../../server/core/trip/settle-trip.ts';
import { courseOf, EXAMPLE_RIG } from '../../helpers/course.ts';

it('water goes by the time that passes: driving on the way home, whose nights are known by the clock, nights as well out', () => {
  // 490 km are two days of 7 h at 35 km/h: out the first day with its night, and 7 hours of the next; home 14 hours.
  const lengthM = 490_000;
  const even = courseOf({ commodity: 'water', lengthM });
  const { trip } = settleTrip({ departure: '2026-05-04', departureHour: 8 });
  const { rig } = settleRig(EXAMPLE_RIG);
  const plan = pacePlan({ lengthM, rig, trip, camps: [], wayM: evenProfile(lengthM, 1), ferries: [] });
  const { litres, clock, off } = pacedCourse(even, plan);
  expect(amountBetween(litres.home, 0, lengthM)).toBeCloseTo((14 / 24) * 18, 9);
  expect(clock).toMatchObject({ hoursPerDay: 7, nightL: expect.closeTo((17 / 24) * 18, 9) });
  expect(off.homeLitres).toBeCloseTo(18 / 24 / 35_000, 12);
  expect(amountBetween(litres.out, 0, lengthM)).toBeCloseTo((31 / 24) * 18, 9);
});
