import { COMMODITIES } from '../../quantity/commodities.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { groupedBySpan } from '../question/supply-stops.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';

/** A supply stop that may fail: with all that it gives of both commodities at once. */
export interface FailingStop {
  /** Of its supplies the first along the route. */
  readonly first: SupplyEdge;
  readonly edges: ReadonlySet<SupplyEdge>;
}

/** The supplies of both commodities that lie close together, as stops in route order. */
export function failingStops({ sides }: Pick<CarryQuestion, 'sides'>): FailingStop[] {
  const edges = COMMODITIES.flatMap((commodity) => sides[commodity].edges);
  const passings = edges.filter(({ kind }) => kind === 'passing');
  return groupedBySpan(passings).map((group) => ({ first: group[0], edges: new Set(group) }));
}
