import { expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import { amountBetween, evenProfile, withoutSpans } from '../../../server/core/gaps/course/profile.ts';
import { pacePlan } from '../../../server/core/pace/pace-plan.ts';
import { pacedCourse } from '../../../server/core/pace/paced-course.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import type { Ferry } from '../../../server/core/route/ferry.ts';
import { settleTrip } from '../../../server/core/trip/settle-trip.ts';
import { courseOf, EXAMPLE_RIG } from '../../helpers/course.ts';

/** 490 km at 35 km/h, on which ferries may go. */
function paced(changes: { rigFile?: RigFile; surfaces?: TripFile['surfaces']; ferries?: Ferry[] }) {
  const lengthM = 490_000;
  const { trip } = settleTrip({
    departure: '2026-05-04',
    departureHour: 8,
    surfaces: changes.surfaces ?? [],
  });
  const { rig } = settleRig(changes.rigFile ?? EXAMPLE_RIG);
  const ferries = changes.ferries ?? [];
  const wayM = withoutSpans(evenProfile(lengthM, 1), ferries);
  const plan = pacePlan({ lengthM, rig, trip, camps: [], wayM, ferries });
  return pacedCourse(
    courseOf({ commodity: 'water', lengthM, rigFile: changes.rigFile ?? EXAMPLE_RIG }),
    plan,
  );
}

it('a night is as long as after the shortest day of driving on any surface of the route', () => {
  const pace = {
    ...EXAMPLE_RIG.pace,
    bySurface: { sand: { hoursPerDay: 4, kmPerHour: { slow: 20, typical: 25, fast: 30 } } },
  };
  const rigFile = { ...EXAMPLE_RIG, pace };
  const surfaces = [{ fromKm: 100, toKm: 200, surface: 'sand' as const }];
  expect(paced({ rigFile, surfaces }).clock).toMatchObject({
    hoursPerDay: 4,
    nightL: expect.closeTo((20 / 24) * 18, 9),
  });
  expect(paced({ rigFile }).clock?.hoursPerDay).toBe(7);
});

it('water on the way home goes aboard a ferry by its hours, and ashore by those of driving', () => {
  const ferry = { fromM: 100_000, toM: 200_000, id: 'way/1', name: null, hours: 6, isMapped: true };
  const { litres } = paced({ ferries: [ferry] });
  const homeL = (fromM: number, toM: number) => amountBetween(litres.home, fromM, toM);
  expect(homeL(100_000, 200_000)).toBeCloseTo((6 / 24) * 18, 9);
  expect(homeL(0, 100_000)).toBeCloseTo((100 / 35 / 24) * 18, 9);
  expect(homeL(200_000, 490_000)).toBeCloseTo((290 / 35 / 24) * 18, 9);
});

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
