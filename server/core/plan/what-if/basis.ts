import type { Commodity } from '../../../contract/common.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { evenLoad, type Load } from '../../mass/load.ts';
import type { HeldPlan } from '../drive/drive-actual.ts';
import type { Stretch } from '../drive/stretch.ts';
import { type CarrySide, type Halt, haltsOf, otherOf } from '../question/problem.ts';
import { problemOf } from '../question/problem-of.ts';

export interface BasisSide {
  /** As a plan is chosen: with the heaviest mass. */
  side: CarrySide;
  stretches: Stretch[];
  /** Cans that there are. */
  cans: number;
}

/** What all what-ifs and the gauge are reckoned with. */
export interface Basis {
  kind: 'plan' | 'gaps';
  sides: Record<Commodity, BasisSide>;
  /** The halts that are made for each commodity, as the other pays for them. */
  halts: Record<Commodity, Halt[]>;
  /** What is on board along the route. */
  load: Load;
}

/** The basis of a plan that was driven and held; without one that of the gaps: all passings used, cans empty. */
export function basisOf(reckoned: Reckoned, held: HeldPlan | null): Basis {
  return held === null ? gapsBasis(reckoned) : planBasis(held);
}

function planBasis({ problem, heaviest, load, choice, driven }: HeldPlan): Basis {
  const made = (commodity: Commodity) =>
    haltsOf(
      { ...problem.sides[commodity], edges: driven[commodity].map(({ to }) => to) },
      problem.sides[otherOf(commodity)].course,
    );
  const halts = { fuel: made('fuel'), water: made('water') };
  const side = (commodity: Commodity): BasisSide => {
    const of = problem.sides[commodity];
    return {
      side: heaviest[commodity],
      cans: choice.cans[commodity],
      stretches: driven[commodity].map(({ from, to, tankL, cans, detours }) => ({
        course: of.course,
        from,
        to,
        tankL,
        cans,
        canL: of.canL,
        washingCans: !of.cansDrinkable,
        detours,
      })),
    };
  };
  return {
    kind: 'plan',
    sides: { fuel: side('fuel'), water: side('water') },
    halts,
    load,
  };
}

function gapsBasis(reckoned: Reckoned): Basis {
  const { problem } = problemOf(reckoned);
  const side = (commodity: Commodity): BasisSide => {
    const { course, edges, startL } = reckoned.sides[commodity];
    const { drawableL } = course.rig[commodity];
    const { canL } = problem.sides[commodity];
    return {
      side: { ...problem.sides[commodity], course, edges, startL },
      cans: 0,
      stretches: edges.slice(1).map((to, index) => ({
        course,
        from: edges[index]!,
        to,
        tankL: index === 0 ? startL : drawableL,
        cans: 0,
        canL,
        detours: [],
      })),
    };
  };
  return {
    kind: 'gaps',
    sides: { fuel: side('fuel'), water: side('water') },
    halts: { fuel: [], water: [] },
    load: evenLoad(0),
  };
}
