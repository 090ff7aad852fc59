import { expect, it } from 'vitest';
import { amountBetween, evenProfile } from '../../../server/core/gaps/profile.ts';
import { pacePlan } from '../../../server/core/pace/pace-plan.ts';
import { pacedCourse } from '../../../server/core/pace/paced-course.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { settleTrip } from '../../../server/core/trip/settle-trip.ts';
import { courseOf, EXAMPLE_RIG } from '../../helpers/course.ts';

it('water on the way home goes by the days of driving, out by the time that passes', () => {
  // 490 km are two days of 7 h at 35 km/h: home 2 × 18 l; out the first day with its night, and 7 hours of the next.
  const lengthM = 490_000;
  const even = courseOf({ commodity: 'water', lengthM });
  const { trip } = settleTrip({ departure: '2026-05-04', departureHour: 8 });
  const { rig } = settleRig(EXAMPLE_RIG);
  const plan = pacePlan({ lengthM, rig, trip, camps: [], wayM: evenProfile(lengthM, 1) });
  const { litres } = pacedCourse(even, plan);
  expect(amountBetween(litres.home, 0, lengthM)).toBeCloseTo(36, 9);
  expect(amountBetween(litres.out, 0, lengthM)).toBeCloseTo((31 / 24) * 18, 9);
});
