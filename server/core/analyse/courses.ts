import type { Commodity } from '../../contract/common.ts';
import { hotterStretches } from '../crew/aboard/stretch-heat.ts';
import { type FuelPlan, type FuelSources, fuelCourse, fuelPlan } from '../fuel/course/fuel-course.ts';
import { nightsAt } from '../fuel/course/fuel-facts.ts';
import { loadedCourse } from '../fuel/course/loaded-course.ts';
import type { Course } from '../gaps/course/course.ts';
import type { Load } from '../mass/load.ts';
import { massWithFullTanks } from '../mass/mass-at.ts';
import { closedSpans } from '../notes/on-route/closed-stretches.ts';
import { paceOn } from '../pace/pace-on.ts';
import { pacedCourse } from '../pace/paced-course.ts';
import type { SpanM } from '../quantity/span.ts';
import type { RouteLine } from '../route/route-line.ts';
import { courseOf } from './course-of.ts';
import type { DriveDays } from './drive-days.ts';
import { withoutFerries } from './ferried.ts';
import type { Settled } from './settle.ts';

/** What of a route the courses of both commodities are made on. */
export interface CourseGround {
  readonly route: RouteLine;
  readonly drive: DriveDays;
  /** Stretches for which no extract would show a supply. */
  readonly uncovered: Readonly<Record<Commodity, readonly SpanM[]>>;
  /** Where washing water is taken from the source, metres along. */
  readonly washingStopsM: readonly number[];
}

/** The courses of both commodities, and that of fuel for any load. */
export interface Courses {
  readonly fuel: Course;
  readonly water: Course;
  readonly fuelPlan: FuelPlan;
  /** Fuel with so much on board along the route: the rate may go by the mass. */
  readonly fuelWithLoads: (load: Load) => Course;
}

/** The one recipe of courses: analysis, plan and what-if all go by it. */
export function coursesOf(settled: Settled, ground: CourseGround): Courses {
  const { route, drive, uncovered, washingStopsM } = ground;
  const closed = closedSpans(settled.trip.closed, route.lengthM, drive.pace);
  const even = (commodity: Commodity): Course => ({
    ...courseOf({ route, ...settled }, commodity, drive.stays, uncovered[commodity]),
    closed,
  });
  const paced = (commodity: Commodity): Course => pacedCourse(even(commodity), drive.pace);
  const sources = fuelSourcesOf(settled, route, drive);
  const { massKg } = sources;
  const evenFuel = paced('fuel');
  const plan = fuelPlan(sources);
  const fuel = withoutFerries(fuelCourse(evenFuel, plan), route);
  return {
    fuel,
    water: { ...pacedCourse(inHeat(even('water'), settled), drive.pace), washingStopsM },
    fuelPlan: plan,
    fuelWithLoads: (load) =>
      massKg === null || (load.mostKg === 0 && load.along.length === 0)
        ? fuel
        : withoutFerries(loadedCourse(evenFuel, sources, massKg, load), route),
  };
}

/** A course of water with the stretches on which the crew drinks more. */
function inHeat(even: Course, { rig, trip }: Settled): Course {
  const hotter = hotterStretches(rig, trip.heat, even.lengthM);
  if (hotter.length === 0) return even;
  const addedByHeatPerDay = Math.max(...hotter.map(({ addedPerDay }) => addedPerDay));
  return { ...even, hotter, rig: { ...even.rig, water: { ...even.rig.water, addedByHeatPerDay } } };
}

function fuelSourcesOf({ rig, trip, rigFile }: Settled, route: RouteLine, drive: DriveDays): FuelSources {
  return {
    route,
    rig,
    trip,
    stays: drive.stays,
    nights: nightsAt(drive.pace.schedules.slow.nights, trip),
    massKg: massWithFullTanks(rigFile),
    kmPerHour: (surface, end) => paceOn(rig, surface).kmPerHour[end],
    hoursPerDay: (surface) => paceOn(rig, surface).hoursPerDay,
  };
}
