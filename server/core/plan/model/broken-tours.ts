import { numberAt } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { holdsOver } from '../legs/hops-in-turn.ts';
import { type Leg, pathOf } from '../legs/leg.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { type CarrySide, edgeAt, endsOf } from '../side/carry-side.ts';
import { costOf, type Halt, haltsBetween, haltsOf } from '../side/halts.ts';
import { otherOf } from '../side/other-of.ts';
import { columnOf, entriesOf, type LegColumn } from './columns.ts';
import { atMost, type MipEntry, type MipRow } from './mip.ts';
import type { CarryModel } from './model.ts';

/**
 * Legs of several hops that do not hold with the halts of the other commodity that are made on them, as rows that rule
 * both out together: the leg, with every other over the same supplies that does not hold either, and of the halts as few
 * as already break them. The model sees to each hop by itself; that a halt leaves less for the next is seen to here.
 */
export function brokenTours(question: CarryQuestion, model: CarryModel, values: Float64Array): MipRow[] {
  return COMMODITIES.flatMap((commodity) => {
    const side = question.sides[commodity];
    const tours = model.legs[commodity].filter(({ leg }) => leg.hops.length > 1);
    const chosen = tours.filter((tour) => isChosen(values, tour));
    if (chosen.length === 0) return [];
    const other = question.sides[otherOf(commodity)];
    const calling = model.legs[other.commodity].filter((leg) => isChosen(values, leg));
    const edges = calling.flatMap(({ leg }) => leg.hops.map(({ to }) => edgeAt(other, to)));
    const halts = haltsOf({ ...other, edges }, side.course);
    return chosen
      .filter(({ leg }) => !holdsWith(side, leg, halts))
      .map(({ leg }) => rowAgainst(side, model, { leg, halts, tours }));
  });
}

const isChosen = (values: Float64Array, { column }: LegColumn): boolean => numberAt(values, column) === 1;

const holdsWith = (side: CarrySide, leg: Leg, halts: readonly Halt[]): boolean =>
  holdsOver(side, leg, (from, to) => costOf(haltsBetween(halts, ...endsOf(side, { from, to }))));

interface BrokenTour {
  readonly leg: Leg;
  /** Made of the other commodity. */
  readonly halts: readonly Halt[];
  readonly tours: readonly LegColumn[];
}

function rowAgainst(side: CarrySide, model: CarryModel, { leg, halts, tours }: BrokenTour): MipRow {
  const breaking = fewestBreaking(side, leg, halts);
  const path = pathOf(leg);
  const alike = tours.filter((tour) => pathOf(tour.leg) === path && !holdsWith(side, tour.leg, breaking));
  return atMost(breaking.length, [
    ...entriesOf(alike, 1),
    ...breaking.map((halt): MipEntry => [columnOf(model.halts, halt), 1]),
  ]);
}

/** Of the halts on a leg that it does not hold with, as few as already break it. */
function fewestBreaking(side: CarrySide, leg: Leg, halts: readonly Halt[]): Halt[] {
  const onLeg = leg.hops.flatMap((hop) => haltsBetween(halts, ...endsOf(side, hop)));
  return onLeg.reduce((breaking, halt) => {
    const fewer = breaking.filter((each) => each !== halt);
    return holdsWith(side, leg, fewer) ? breaking : fewer;
  }, onLeg);
}
