import type { Commodity } from '../../../contract/common.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { type CarrySide, cansAllowed, drawableOf, endsOf } from '../side/carry-side.ts';
import { type PlanEdge, planEdge } from '../side/plan-edge.ts';
import { isBound } from '../side/supply-edge.ts';
import { type BrokenStretch, brokenStretches } from './broken-stretches.ts';

/** What makes a plan impossible. `together`: each commodity alone can be done, both together cannot. */
export interface PlanBreak {
  readonly cause: Commodity | 'together' | 'mass';
  readonly from: PlanEdge | null;
  readonly to: PlanEdge | null;
  /** Litres missing with as many cans as there may be. */
  readonly missingL: number | null;
  readonly text: Phrase;
}

/** Why there is no plan: the stretches of each commodity, or, where each alone could be done, what does not fit together. */
export function breaksOf(question: CarryQuestion, worksWithoutMasses: () => boolean | null): PlanBreak[] {
  const breaks = COMMODITIES.flatMap((commodity) => {
    const side = question.sides[commodity];
    return brokenStretches(side).map((stretch) => stretchBreak(side, stretch));
  });
  if (breaks.length > 0) return breaks;
  const massOnly = question.room !== null && worksWithoutMasses();
  if (massOnly === true) return [MASS_BREAK];
  const phrase = massOnly === null ? 'together-not-found-out' : 'detours-forbid';
  return [{ ...MASS_BREAK, cause: 'together', text: { phrase, facts: {} } }];
}

function stretchBreak(side: CarrySide, stretch: BrokenStretch): PlanBreak {
  const { commodity, edges } = side;
  const { missingL } = stretch;
  const [start, end] = endsOf(side, stretch);
  const [from, to] = [planEdge(start), planEdge(end)];
  const cans = cansAllowed(side, stretch.from);
  const littleLeftOut = edges.slice(stretch.from + 1, stretch.to).some(isBound);
  const startL = stretch.from === 0 && side.startL < drawableOf(side) ? side.startL : null;
  const facts = { commodity, from, to, missingL, cans, startL, littleLeftOut };
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
