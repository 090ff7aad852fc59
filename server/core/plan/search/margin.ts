import { at } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import type { JointPlan, SearchFacts } from './joint-search.ts';
import { haltOnLegM, type SearchLeg } from './side-table.ts';

/**
 * What the tightest leg of a plan still bears before a reserve is touched: metres of further detour, in which fuel and
 * water compare.
 */
export const leastMarginM = ({ tables }: SearchFacts, { legs }: JointPlan): number =>
  Math.min(
    ...COMMODITIES.flatMap((commodity) => {
      const other = otherOf(commodity);
      const halts = legs[other].flatMap(({ hop }) => at(tables[other].halts, hop.to) ?? []);
      const onLegM = (leg: SearchLeg) => halts.reduce((sum, halt) => sum + haltOnLegM(leg, halt), 0);
      return legs[commodity].map((leg) => leg.hop.spareM - onLegM(leg));
    }),
  );

/** What is searched with so many metres to spare on every leg. */
export function withLeast(facts: SearchFacts, leastM: number): SearchFacts {
  const bears = ({ hop }: SearchLeg) => hop.spareM >= leastM;
  const tables = byCommodity((commodity) => {
    const table = facts.tables[commodity];
    return {
      ...table,
      legs: table.legs.filter(bears),
      legsFrom: table.legsFrom.map((legs) => legs.filter(bears)),
    };
  });
  return { ...facts, tables, leastM };
}
