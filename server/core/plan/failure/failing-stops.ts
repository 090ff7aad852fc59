import type { Commodity } from '../../../contract/common.ts';
import type { Edge } from '../../gaps/course/course.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { type Group, groupedBySpan } from '../question/supply-stops.ts';
import { byCommodity } from '../side/other-of.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';

/**
 * A supply stop that may fail: all its objects, with both commodities, and each wherever the route passes it. The one rule
 * of failure, for the plan, what-ifs and the list to telephone.
 */
export interface FailingStop {
  /** Of its passings the first along the route. */
  readonly first: SupplyEdge;
  /** The objects that fail. */
  readonly ids: ReadonlySet<string>;
  /** All their passings, by place: at the first where something was to be had the crew finds out. In route order. */
  readonly places: readonly Group<SupplyEdge>[];
}

/** The stops of a question. */
export const stopsThatMayFail = ({ sides }: Pick<CarryQuestion, 'sides'>): FailingStop[] =>
  failingStops(byCommodity((commodity) => sides[commodity].edges));

/** The supplies of both commodities that lie close together, as stops in route order; each set of objects once. */
export function failingStops(edges: Readonly<Record<Commodity, readonly SupplyEdge[]>>): FailingStop[] {
  const passings = COMMODITIES.flatMap((commodity) => edges[commodity]).filter(
    ({ kind }) => kind === 'passing',
  );
  const stops = new Map<string, FailingStop>();
  for (const group of groupedBySpan(passings)) {
    const ids = new Set(group.flatMap(({ id }) => id ?? []));
    const key = [...ids].sort().join('\n');
    if (stops.has(key)) continue;
    const places = groupedBySpan(passings.filter(({ id }) => id !== null && ids.has(id)));
    const [[first] = group] = places;
    stops.set(key, { first, ids, places });
  }
  return [...stops.values()];
}

/** Whether an edge is a passing of a stop that fails. */
export const failsWith = ({ ids }: FailingStop, { id }: Pick<Edge, 'id'>): boolean =>
  id !== null && ids.has(id);
