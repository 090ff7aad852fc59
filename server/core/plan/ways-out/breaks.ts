import type { PlanBreak } from '../../../contract/plan.ts';
import { reckon } from '../../gaps/reckon.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { allLegs } from '../model/tours.ts';
import { cansAllowed, leaving, tanksL } from '../question/leg.ts';
import { type CarryProblem, type CarrySide, isBound } from '../question/problem.ts';
import { edgeOf, placeText } from '../question/told-edge.ts';

const litres = (value: number): string => `${Math.ceil(value * 10) / 10} l`;

/** Indexes of the side's edges, and what is missing between them with as many cans as there may be. */
export interface BrokenStretch {
  from: number;
  to: number;
  missingL: number;
}

/**
 * The stretches of a side that no chain of legs gets over, in route order: after each it is gone on from its end as if
 * supplied there. Empty where a chain leads from start to end.
 */
export function brokenStretches(side: CarrySide): BrokenStretch[] {
  const last = side.edges.length - 1;
  const { legs } = allLegs(side, []);
  const broken: BrokenStretch[] = [];
  for (let begin = 0; ; ) {
    const reached = new Set([begin]);
    // They come in the order of where they begin.
    for (const leg of legs) if (reached.has(leg.from)) reached.add(leg.to);
    if (reached.has(last)) return broken;
    const stretch = leastMissing(side, reached);
    broken.push(stretch);
    begin = stretch.to;
  }
}

/** From one of the edges that are reached to a later one that is not and gives all that is wanted. */
function leastMissing(side: CarrySide, reached: ReadonlySet<number>): BrokenStretch {
  const { course, edges, canL, cansDrinkable } = side;
  let best: BrokenStretch = { from: 0, to: edges.length - 1, missingL: Number.POSITIVE_INFINITY };
  for (const from of reached) {
    const inCansL = cansAllowed(side, from) * canL;
    const departL = tanksL(side, from) + inCansL;
    // As a leg is: with the time that filling takes, and no drinking water in cans kept for washing.
    const begins = leaving(edges[from]!, departL);
    const washingCansL = cansDrinkable ? 0 : inCansL;
    for (let to = from + 1; to < edges.length; to += 1) {
      if (reached.has(to) || isBound(edges[to]!)) continue;
      const { marginL, grades } = reckon(course, begins, edges[to]!, departL, 0, washingCansL);
      const missingL = -Math.min(marginL, grades?.drinking.marginL ?? marginL);
      if (missingL < best.missingL) best = { from, to, missingL };
    }
  }
  return best;
}

/** Why there is no plan: the stretches of each commodity, or, where each alone could be done, what does not fit together. */
export function breaksOf(problem: CarryProblem, worksWithoutMasses: () => boolean | null): PlanBreak[] {
  const breaks = COMMODITIES.flatMap((commodity) => {
    const side = problem.sides[commodity];
    return brokenStretches(side).map((broken): PlanBreak => {
      const from = edgeOf(side.edges[broken.from]!);
      const to = edgeOf(side.edges[broken.to]!);
      const cans = cansAllowed(side, broken.from);
      const aboard = `full tanks and ${cans === 1 ? '1 can' : `${cans} cans`}`;
      const between = side.edges.slice(broken.from + 1, broken.to).some(isBound);
      const little = between ? ', what little is to be had on the way left out' : '';
      const text = `From ${placeText(from)} to ${placeText(to)} ${litres(broken.missingL)} of ${commodity} are missing with ${aboard}${little}.`;
      return { cause: commodity, from, to, missingL: broken.missingL, text };
    });
  });
  if (breaks.length > 0) return breaks;
  const massOnly = problem.room !== null && worksWithoutMasses();
  if (massOnly === true) return [MASS_BREAK];
  if (massOnly === null) {
    const text =
      'Fuel alone and water alone could be done; whether the detours to both or a permitted mass forbid it was not found out in the time there was.';
    return [{ ...MASS_BREAK, cause: 'together', text }];
  }
  return [
    {
      ...MASS_BREAK,
      cause: 'together',
      text: 'Fuel alone and water alone could be done; the detours to both together use up more than there is.',
    },
  ];
}

/** The permitted masses are what makes it impossible. */
export const MASS_BREAK: PlanBreak = {
  cause: 'mass',
  from: null,
  to: null,
  missingL: null,
  text: 'With the cans that it takes the vehicle is over a permitted mass.',
};
