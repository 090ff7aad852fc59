import { COMMODITIES } from '../../quantity/commodities.ts';
import type { CarryProblem, SupplyEdge } from '../question/problem.ts';
import { groupedBySpan } from '../question/supply-stops.ts';

/** A supply stop that may fail: with all that it gives of both commodities at once. */
export interface FailingStop {
  /** Metres along the route, of its first supply. */
  atM: number;
  edges: ReadonlySet<SupplyEdge>;
}

/** The supplies of both commodities that lie close together, as stops in route order. */
export function failingStops({ sides }: Pick<CarryProblem, 'sides'>): FailingStop[] {
  const edges = COMMODITIES.flatMap((commodity) => sides[commodity].edges).filter(
    ({ kind }) => kind === 'passing',
  );
  return groupedBySpan(edges, ({ atM }) => atM).map((group) => ({
    atM: group[0].atM,
    edges: new Set(group),
  }));
}
