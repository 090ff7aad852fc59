import type { Commodity } from '../../../contract/common.ts';
import { reckon } from '../../gaps/reckon.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { allLegs } from '../model/tours.ts';
import { cansAllowed, leaving, tanksL } from '../question/leg.ts';
import { type PlanEdge, planEdge } from '../question/plan-edge.ts';
import { type CarryProblem, type CarrySide, isBound } from '../question/problem.ts';

/** What makes a plan impossible. `together`: each commodity alone can be done, both together cannot. */
export interface PlanBreak {
  readonly cause: Commodity | 'together' | 'mass';
  readonly from: PlanEdge | null;
  readonly to: PlanEdge | null;
  /** Litres missing with as many cans as there may be. */
  readonly missingL: number | null;
  readonly text: Phrase;
}

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
    return brokenStretches(side).map((stretch) => stretchBreak(side, stretch));
  });
  if (breaks.length > 0) return breaks;
  const massOnly = problem.room !== null && worksWithoutMasses();
  if (massOnly === true) return [MASS_BREAK];
  const phrase = massOnly === null ? 'together-not-found-out' : 'detours-forbid';
  return [{ ...MASS_BREAK, cause: 'together', text: { phrase, facts: {} } }];
}

function stretchBreak(side: CarrySide, broken: BrokenStretch): PlanBreak {
  const { commodity, edges } = side;
  const { missingL } = broken;
  const from = planEdge(edges[broken.from]!);
  const to = planEdge(edges[broken.to]!);
  const cans = cansAllowed(side, broken.from);
  const littleLeftOut = edges.slice(broken.from + 1, broken.to).some(isBound);
  const facts = { commodity, from, to, missingL, cans, littleLeftOut };
  return { cause: commodity, from, to, missingL, text: { phrase: 'stretch-lacks', facts } };
}

/** The permitted masses are what makes it impossible. */
export const MASS_BREAK: PlanBreak = {
  cause: 'mass',
  from: null,
  to: null,
  missingL: null,
  text: { phrase: 'masses-forbid', facts: {} },
};
