import type { Commodity } from '../../../contract/common.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { at } from '../../lists/at.ts';
import { pairsOf } from '../../lists/pairs.ts';
import { evenLoad, type Load } from '../../mass/load.ts';
import { questionOf } from '../question/question-of.ts';
import type { CarrySide } from '../side/carry-side.ts';
import { type Halt, haltsOf } from '../side/halts.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import type { DrivenPlan } from './driven-plan.ts';
import type { Stretch } from './stretch.ts';

export interface BasisSide {
  /** As a plan is chosen: with the heaviest mass. */
  readonly side: CarrySide;
  readonly stretches: readonly Stretch[];
  /** Cans that there are. */
  readonly cans: number;
}

/** What all what-ifs and the gauge are reckoned with. */
export interface Basis {
  readonly kind: 'plan' | 'gaps';
  readonly sides: Readonly<Record<Commodity, BasisSide>>;
  /** The halts that are made for each commodity, as the other pays for them. */
  readonly halts: Readonly<Record<Commodity, readonly Halt[]>>;
  /** What is on board along the route. */
  readonly load: Load;
}

/** The basis of a plan that was driven and held; without one that of the gaps: all passings used, cans empty. */
export const basisOf = (reckoned: Reckoned, plan: DrivenPlan | null): Basis =>
  plan === null ? gapsBasis(reckoned) : planBasis(plan);

function planBasis({ question: { sides }, heaviest, load, choice, legs }: DrivenPlan): Basis {
  return {
    kind: 'plan',
    sides: byCommodity((commodity) => ({
      side: heaviest[commodity],
      cans: choice.cans[commodity],
      stretches: legs[commodity].map(({ stretch }) => stretch),
    })),
    halts: byCommodity((commodity) => {
      const edges = legs[commodity].map(({ to }) => to);
      return haltsOf({ ...sides[commodity], edges }, sides[otherOf(commodity)].course);
    }),
    load,
  };
}

function gapsBasis(reckoned: Reckoned): Basis {
  const { question } = questionOf(reckoned);
  const side = (commodity: Commodity): BasisSide => {
    const { course, edges, startL } = reckoned.sides[commodity];
    const { gaps } = reckoned.analysis[commodity];
    const { canL } = question.sides[commodity];
    return {
      side: { ...question.sides[commodity], course, edges, counting: edges, startL },
      cans: 0,
      stretches: pairsOf(edges).map(([from, to], index) => ({
        course,
        from,
        to,
        // As full as the supply makes them.
        tankL: at(gaps, index).departL,
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
