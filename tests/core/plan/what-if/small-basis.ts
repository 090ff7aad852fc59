import fc from 'fast-check';
import type { Commodity } from '../../../../server/contract/common.ts';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { Course, Edge } from '../../../../server/core/gaps/course/course.ts';
import { evenLoad } from '../../../../server/core/mass/load.ts';
import type { Basis } from '../../../../server/core/plan/drive/basis.ts';
import type { Stretch } from '../../../../server/core/plan/drive/stretch.ts';
import type { CarrySide } from '../../../../server/core/plan/side/carry-side.ts';
import { haltsBetween, haltsOf } from '../../../../server/core/plan/side/halts.ts';
import { otherOf } from '../../../../server/core/plan/side/other-of.ts';
import { courseOf, endEdge, startEdge } from '../../../helpers/course.ts';
import { questionOf, type SmallRoute, smallRoute } from '../by-hand/small-routes.ts';

/** A stretch from the start to the end of a route of one rate, all aboard told. */
export function plainStretch(facts: {
  commodity?: Commodity;
  lengthKm: number;
  rigFile: RigFile;
  tankL: number;
  cans?: number;
}): Stretch {
  const { commodity = 'fuel', lengthKm, rigFile, tankL, cans = 0 } = facts;
  const course = courseOf({ commodity, rigFile, lengthM: lengthKm * 1000 });
  const canL = course.rig[commodity].canL;
  return { course, from: startEdge, to: endEdge(lengthKm * 1000), tankL, cans, canL, detours: [] };
}

/** A basis of both commodities from edges; tanks full at each stop, so many cans full on each stretch. */
export function basisFrom(
  sides: Record<Commodity, CarrySide>,
  cansOn: (commodity: Commodity, stretch: number) => number,
): Basis {
  const halts = {
    fuel: haltsOf(sides.fuel, sides.water.course),
    water: haltsOf(sides.water, sides.fuel.course),
  };
  const made = (commodity: Commodity) => {
    const side = sides[commodity];
    const { course, edges, canL, startL } = side;
    const stretches = edges.slice(1).map((to, index): Stretch => {
      const from = edges[index]!;
      return {
        course,
        from,
        to,
        tankL: index === 0 ? startL : course.rig[commodity].drawableL,
        cans: cansOn(commodity, index),
        canL,
        detours: haltsBetween(halts[otherOf(commodity)], from, to),
      };
    });
    return { side, stretches, cans: Math.max(0, ...stretches.map(({ cans }) => cans)) };
  };
  return { kind: 'plan', sides: { fuel: made('fuel'), water: made('water') }, halts, load: evenLoad(0) };
}

export interface SmallBasis {
  route: SmallRoute;
  basis: Basis;
}

/** Any small route with any number of full cans on each stretch, whether it can be done or not. */
export const smallBasis = (): fc.Arbitrary<SmallBasis> =>
  fc
    .record({
      route: smallRoute(),
      cans: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 8, maxLength: 8 }),
    })
    .map(({ route, cans }) => ({
      route,
      basis: basisFrom(
        questionOf(route).sides,
        (commodity, index) => cans[(index + (commodity === 'fuel' ? 0 : 3)) % 8]!,
      ),
    }));

/** The same stretches driven with another course. */
export const withCourses = (basis: Basis, change: (course: Course) => Course): Basis => {
  const made = (commodity: Commodity) => ({
    ...basis.sides[commodity],
    stretches: basis.sides[commodity].stretches.map((stretch) => ({
      ...stretch,
      course: change(stretch.course),
    })),
  });
  return { ...basis, sides: { fuel: made('fuel'), water: made('water') } };
};

export const stopAt = (km: number, detourKm: number, id = `node/${km}`): Edge => ({
  kind: 'passing',
  id,
  name: `Stop ${km}`,
  atM: km * 1000,
  detourM: detourKm * 1000,
  evidence: 'stated',
});
