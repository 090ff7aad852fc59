import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { questionOf } from '../question/question-of.ts';
import { type CarrySide, drawableOf } from '../side/carry-side.ts';
import { brokenStretches } from './broken-stretches.ts';
import { cansWith, isOver, type WaysOutContext } from './try-change.ts';
import { type Fill, WAY_OUT, type WayOut } from './way-out.ts';

/** Litres are told, and filled, by tenths, rounded up. */
const PARTS_OF_LITRE = 10;

/**
 * What to fill before leaving, where the trip starts with less than the tanks hold: what the first stretch lacks; where
 * that makes no plan, all that there is room for.
 */
export function fillFirstWay(context: WaysOutContext): WayOut[] {
  const { question } = questionOf(context.reckoned);
  const low = COMMODITIES.filter((commodity) => roomL(question.sides[commodity]) > 0);
  for (const fillL of [lackL, roomL]) {
    if (isOver(context)) return [];
    const fills = fillsBy(question, low, fillL);
    const [first] = fills;
    if (first === undefined) continue;
    const startL = Object.fromEntries(
      fills.map(({ commodity, litres }) => [commodity, question.sides[commodity].startL + litres]),
    );
    const cans = cansWith(context.reckoned, context, { startL });
    if (cans === null) continue;
    const text = { phrase: 'with-filling-first', facts: { fills } } as const;
    const { commodity, litres: amount } = first;
    return [{ ...WAY_OUT, kind: 'fill-first', text, cans, amount, unit: 'l', atM: 0, commodity, fills }];
  }
  return [];
}

const fillsBy = (
  { sides }: CarryQuestion,
  low: readonly Commodity[],
  fillL: (side: CarrySide) => number,
): Fill[] =>
  low
    .map((commodity) => ({ commodity, litres: Math.min(fillL(sides[commodity]), roomL(sides[commodity])) }))
    .filter(({ litres }) => litres > 0);

const roomL = (side: CarrySide): number => drawableOf(side) - side.startL;

/** What is missing on the stretch from the start, nothing where that holds. */
function lackL(side: CarrySide): number {
  const [first] = brokenStretches(side);
  return first?.from === 0 ? Math.ceil(first.missingL * PARTS_OF_LITRE) / PARTS_OF_LITRE : 0;
}
