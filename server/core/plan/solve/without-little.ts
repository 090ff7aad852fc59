import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import type { Hop, Hops, Leg } from '../legs/leg.ts';
import { legSearches } from '../model/leg-searches.ts';
import type { Cans } from '../question/can-limits.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { searchPlan } from '../search/search-plan.ts';
import type { CarrySide } from '../side/carry-side.ts';
import { byCommodity } from '../side/other-of.ts';
import { isBound } from '../side/supply-edge.ts';

interface FoundPlan {
  readonly legs: Readonly<Record<Commodity, readonly Leg[]>>;
  readonly cans: Cans;
}

/**
 * The best plan that passes by every supply which does not give all that is wanted: a plan of the question as well, found
 * at once, though there may be better ones. Null where there is none, or any one stop has to be able to fail: which
 * supplies are one stop hangs on all of them.
 */
export function planWithoutLittle(question: CarryQuestion): FoundPlan | null {
  if (question.oneFailure !== null) return null;
  const { sides } = question;
  const kept = byCommodity((commodity) =>
    [...sides[commodity].edges.keys()].filter((index) => gives(sides[commodity], index)),
  );
  const fewer = byCommodity((commodity) => ({
    ...sides[commodity],
    edges: kept[commodity].map((index) => at(sides[commodity].edges, index)),
  }));
  const asked = { ...question, sides: fewer };
  const searched = searchPlan(asked, legSearches(asked));
  if (searched.status !== 'found') return null;
  const legs = byCommodity((commodity) =>
    searched.legs[commodity].map((leg) => withIndexes(leg, kept[commodity])),
  );
  return { legs, cans: searched.cans };
}

const gives = ({ edges }: CarrySide, index: number): boolean => !isBound(at(edges, index));

/** A leg by the edges of all of them. */
function withIndexes({ hops: [first, ...more], ...leg }: Leg, kept: readonly number[]): Leg {
  const hop = (each: Hop): Hop => ({ ...each, from: at(kept, each.from), to: at(kept, each.to) });
  const hops: Hops = [hop(first), ...more.map(hop)];
  return { ...leg, from: at(kept, leg.from), to: at(kept, leg.to), hops };
}
