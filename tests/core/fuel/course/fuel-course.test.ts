import { describe, expect, it } from 'vitest';
import type { TripFile } from '../../../../server/contract/trip.ts';
import { fuelCourse, fuelPlan } from '../../../../server/core/fuel/course/fuel-course.ts';
import type { NightsAt } from '../../../../server/core/fuel/course/fuel-facts.ts';
import { settleRig } from '../../../../server/core/rig/settle-rig.ts';
import { settleTrip } from '../../../../server/core/trip/settle-trip.ts';
import { equatorDocument } from '../../../helpers/analyse-input.ts';
import { courseOf, EXAMPLE_RIG } from '../../../helpers/course.ts';
import { routeOfDocument } from '../../route/lines.ts';

const route = { ...routeOfDocument(equatorDocument(100)), lengthM: 100_000 };

function planOf(file: TripFile, nights: NightsAt[] = []) {
  const { rig } = settleRig(EXAMPLE_RIG);
  const { trip } = settleTrip(file);
  return fuelPlan({
    route,
    rig,
    trip,
    stays: [],
    nights,
    massKg: null,
    kmPerHour: (_, pace) => rig.pace.kmPerHour[pace],
    hoursPerDay: () => rig.pace.hoursPerDay,
  });
}

describe('what fuel is reckoned with', () => {
  it('has each night in its place, one at the end just before it', () => {
    const { facts } = planOf({}, [
      { atM: 50_000, nights: 1 },
      { atM: route.lengthM, nights: 1 },
    ]);
    expect(facts.nights.map(({ atM }) => atM)).toEqual([50_000, expect.closeTo(route.lengthM - 0.001, 6)]);
  });

  it('knows where a metre takes more than at the rig’s own rate, and nowhere else', () => {
    const surfaces = [
      { fromKm: 20, toKm: 30, surface: 'sealed' as const },
      { fromKm: 40, toKm: 50, surface: 'sand' as const },
    ];
    const { dearer } = fuelCourse(courseOf({ lengthM: 100_000 }), planOf({ surfaces }));
    expect(dearer.map(({ fromM, toM, surface }) => [fromM, toM, surface])).toEqual([
      [40_000, 50_000, 'sand'],
    ]);
  });

  it('tells of a surface that begins at the end of the route or behind it', () => {
    const cautionsFrom = (fromKm: number) =>
      planOf({ surfaces: [{ fromKm, toKm: 200, surface: 'gravel' }] }).cautions.map(({ code }) => code);
    expect(cautionsFrom(101)).toContain('surface-off-route');
    expect(cautionsFrom(100)).toContain('surface-off-route');
    expect(cautionsFrom(99)).not.toContain('surface-off-route');
  });
});
