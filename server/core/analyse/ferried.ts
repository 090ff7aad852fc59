import type { Course } from '../gaps/course/course.ts';
import { withoutSpans } from '../gaps/course/profile.ts';
import type { Supplies, Surroundings } from '../input/sources.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { Assumption } from '../quantity/assumption.ts';
import type { Term } from '../quantity/term.ts';
import type { RouteLine } from '../route/route-line.ts';
import { withFerries } from '../route/with-ferries.ts';
import { FERRY_KM_PER_HOUR, ferriesOn } from '../surroundings/ferries.ts';
import type { Settled } from './settle.ts';

/** Routes with their ferries: an analysis comes at every keystroke. */
const ferried = new WeakMap<RouteLine, WeakMap<Surroundings, RouteLine>>();

/** A route with the mapped ferries that it takes. */
export function ferriedRoute(route: RouteLine, { surroundings }: Pick<Supplies, 'surroundings'>): RouteLine {
  if (surroundings === undefined) return route;
  const ofRoute = ferried.get(route) ?? new WeakMap<Surroundings, RouteLine>();
  ferried.set(route, ofRoute);
  const known = ofRoute.get(surroundings) ?? withFerries(route, ferriesOn(route, surroundings));
  ofRoute.set(surroundings, known);
  return known;
}

/** A settled trip on a route with ferries: each crossing is a stay for its hours, in its middle. */
export function settledAboard(settled: Settled, { ferries = [] }: RouteLine): Settled {
  if (ferries.length === 0) return settled;
  const aboard = ferries.map(({ fromM, toM, hours, name }) => ({
    atM: (fromM + toM) / 2,
    days: hours / 24,
    name,
  }));
  return { ...settled, trip: { ...settled.trip, stays: [...settled.trip.stays, ...aboard] } };
}

/** A course of fuel on which nothing is burnt aboard ferries. */
export function withoutFerries(course: Course, { ferries = [] }: RouteLine): Course {
  if (ferries.length === 0) return course;
  return {
    ...course,
    wayM: withoutSpans(course.wayM, ferries),
    litres: {
      out: withoutSpans(course.litres.out, ferries),
      home: withoutSpans(course.litres.home, ferries),
    },
    explain: (fromM, toM) => {
      const terms: Term[] = [];
      let reachedM = fromM;
      for (const ferry of [...ferries, { fromM: toM, toM }]) {
        const endM = Math.min(toM, ferry.fromM);
        if (endM > reachedM) terms.push(...course.explain(reachedM, endM));
        reachedM = Math.max(reachedM, ferry.toM);
      }
      return terms;
    },
  };
}

/** What is taken for a ferry, so that nobody is surprised by fuel that is not burnt. */
export const ferryCautions = ({ ferries = [] }: RouteLine): Caution[] =>
  ferries.map(({ fromM, toM, name, hours, isMapped }) => ({
    code: 'ferry',
    facts: { name, hours, isMapped },
    fromM,
    toM,
  }));

/** Hours of ferries that nobody mapped. */
export const ferryAssumptions = ({ ferries = [] }: RouteLine): Assumption[] =>
  ferries
    .filter(({ isMapped }) => !isMapped)
    .map(({ id, hours }) => ({
      path: `/map/${id}/duration`,
      value: { phrase: 'hours', facts: { hours } },
      why: { phrase: 'slow-ferry', facts: { kmPerHour: FERRY_KM_PER_HOUR } },
    }));
