import type { Commodity } from '../../contract/common.ts';
import type { RigFile } from '../../contract/rig.ts';
import type { TripFile } from '../../contract/trip.ts';
import { withHelpHours } from '../crew/aboard/help-hours.ts';
import { type FuelSources, fuelCourse, fuelPlan } from '../fuel/course/fuel-course.ts';
import { loadedCourse } from '../fuel/course/loaded-course.ts';
import { nightsAt } from '../fuel/course/nights-at.ts';
import type { Course } from '../gaps/course.ts';
import { type PlacedCamp, staysOf } from '../gaps/stays.ts';
import type { Load } from '../mass/load.ts';
import { massWithFullTanks } from '../mass/mass-at.ts';
import { paceOn, withCampHours } from '../pace/pace-on.ts';
import { pacePlan } from '../pace/pace-plan.ts';
import { pacedCourse } from '../pace/paced-course.ts';
import type { SpanM } from '../quantity/span.ts';
import { settleRig } from '../rig/settle-rig.ts';
import type { RouteLine } from '../route/route-line.ts';
import { settleTrip } from '../trip/settle-trip.ts';
import { courseOf } from './course-of.ts';

/** What of an analysis stays when rig or trip are changed to see what that does. */
export interface CourseGround {
  route: RouteLine;
  camps: readonly PlacedCamp[];
  uncovered: Record<Commodity, readonly SpanM[]>;
  washingStopsM: readonly number[];
}

/**
 * The courses of both commodities for another rig or trip on the same route, with a load on board. Supplies are not judged again: which passings count, and when they are reached, is left as it was.
 */
export function coursesWith(
  { route, camps, uncovered, washingStopsM }: CourseGround,
  rigFile: RigFile,
  tripFile: TripFile,
  load: Load,
): Record<Commodity, Course> {
  const { rig: wholeRig, settled } = settleRig(rigFile);
  const { trip } = settleTrip(tripFile);
  const rig = withHelpHours(withCampHours(wholeRig, trip.campAfterHours), trip);
  const { stays } = staysOf(route, trip, camps);
  const { wayM } = courseOf(route, rig, trip, 'water', stays, []);
  const pace = pacePlan(route.lengthM, rig, trip, camps, wayM);
  const fullKg = massWithFullTanks(settled);
  const sources: FuelSources = {
    route,
    rig,
    trip,
    stays,
    nights: nightsAt(pace.schedules.slow.nights, trip),
    massKg: fullKg,
    kmPerHour: (surface, end) => paceOn(rig, surface).kmPerHour[end],
    hoursPerDay: (surface) => paceOn(rig, surface).hoursPerDay,
  };
  const paced = (commodity: Commodity) =>
    pacedCourse(courseOf(route, rig, trip, commodity, stays, uncovered[commodity]), pace);
  return {
    fuel:
      fullKg === null
        ? fuelCourse(paced('fuel'), fuelPlan(sources))
        : loadedCourse(paced('fuel'), sources, fullKg, load),
    water: { ...paced('water'), washingStopsM },
  };
}
