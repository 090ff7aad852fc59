import type { Stay } from '../gaps/course/course.ts';
import { type Camp, type PlacedCamp, placeCamps, staysOf } from '../gaps/course/stays.ts';
import { type PacePlan, pacePlan } from '../pace/pace-plan.ts';
import { allCamps } from '../pace/trip-stops.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { RouteLine } from '../route/route-line.ts';
import { courseOf } from './course-of.ts';
import type { Settled } from './settle.ts';

/** Where the drive halts, and how its days go. */
export interface DriveDays {
  readonly stays: readonly Stay[];
  readonly pace: PacePlan;
  readonly cautions: readonly Caution[];
}

/** Camps of the route and of the trip at their places, in route order. */
export function campsOf(
  route: RouteLine,
  { trip, cautions }: Settled,
  camps: readonly Camp[],
): { camps: readonly PlacedCamp[]; cautions: readonly Caution[] } {
  const marked = placeCamps(route, camps, trip.corridorM);
  const all = allCamps(route.lengthM, trip, marked.placed);
  return { camps: all.camps, cautions: [...marked.cautions, ...cautions, ...all.cautions] };
}

/** The days of a settled rig and trip on a route with its camps. */
export function driveDaysOf(
  route: RouteLine,
  { rig, trip }: Settled,
  camps: readonly PlacedCamp[],
): DriveDays {
  const { stays, cautions } = staysOf(route, trip, camps);
  const { wayM } = courseOf({ route, rig, trip }, 'water', stays, []);
  return {
    stays,
    pace: pacePlan({ lengthM: route.lengthM, rig, trip, camps, wayM, ferries: route.ferries ?? [] }),
    cautions,
  };
}
