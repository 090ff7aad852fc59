import type { Commodity } from '../../../contract/common.ts';
import type { LegSearch } from '../legs/tours.ts';
import { allLegs } from '../legs/tours.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import type { CarrySides } from '../side/carry-side.ts';
import { haltsOf } from '../side/halts.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import { cansAgainstFailure } from './cans-against-failure.ts';

export type LegSearches = Readonly<Record<Commodity, LegSearch>>;

/** Questions on the same sides differ in masses and in the stop that fails: the legs known already, by the rule of failure. */
const known = new WeakMap<CarrySides, Map<string, LegSearches>>();

/** Every leg that a plan may be made of, of both commodities. */
export function legSearches(question: CarryQuestion): LegSearches {
  const { sides, oneFailure } = question;
  const rule = oneFailure === null ? 'no failure' : `reserve spent: ${oneFailure.spendReserve}`;
  const ofSides = known.get(sides) ?? new Map<string, LegSearches>();
  known.set(sides, ofSides);
  const searches = ofSides.get(rule) ?? byCommodity((commodity) => searchOf(question, commodity));
  ofSides.set(rule, searches);
  return searches;
}

function searchOf(question: CarryQuestion, commodity: Commodity): LegSearch {
  const { sides, oneFailure } = question;
  const side = sides[commodity];
  const foreign = haltsOf(sides[otherOf(commodity)], side.course);
  const more = oneFailure === null ? undefined : cansAgainstFailure(question, commodity, oneFailure, foreign);
  return allLegs(side, foreign, more);
}
