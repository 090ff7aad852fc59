import type { Commodity } from '../../../contract/common.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import type { MassLimit } from '../question/mass-room.ts';
import { type CarrySide, cansAllowed, drawableOf, endsOf } from '../side/carry-side.ts';
import { byCommodity } from '../side/other-of.ts';
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
  if (massOnly === true) return [massBreakOf(question)];
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

/** The permitted masses are what makes it impossible: already at the start, with no can full, where that is so. */
export function massBreakOf({ room, sides }: CarryQuestion): PlanBreak {
  const over = (room?.limits ?? []).map((limit) => ({
    limit,
    overKg:
      -limit.leftKg - COMMODITIES.reduce((sum, commodity) => sum + notFilledKg(sides[commodity], limit), 0),
  }));
  const [worst] = over.filter(({ overKg }) => overKg > NOISE_KG).sort((a, b) => b.overKg - a.overKg);
  if (worst === undefined) return MASS_BREAK;
  const { limit, overKg } = worst;
  const facts = {
    mass: limit.name,
    overKg,
    lessL: byCommodity((commodity) => lessL(sides[commodity], limit, overKg)),
  };
  return { ...MASS_BREAK, text: { phrase: 'over-at-start', facts } };
}

/** Float noise. */
const NOISE_KG = 1e-6;

/** What the tanks weigh less than full at the start. */
const notFilledKg = (side: CarrySide, { perLitreKg }: MassLimit): number =>
  perLitreKg[side.commodity] * (drawableOf(side) - side.startL);

/** Litres less at the start that bring it down; null where all that is aboard does not. */
function lessL({ commodity, startL }: CarrySide, { perLitreKg }: MassLimit, overKg: number): number | null {
  const litres = overKg / perLitreKg[commodity];
  return litres <= startL ? litres : null;
}

const MASS_BREAK: PlanBreak = {
  cause: 'mass',
  from: null,
  to: null,
  missingL: null,
  text: { phrase: 'masses-forbid', facts: {} },
};
