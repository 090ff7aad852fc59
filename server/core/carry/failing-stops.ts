import { STOP_SPAN_M } from '../stops/supply-stops.ts';
import { type CarryProblem, COMMODITIES, type SupplyEdge } from './problem.ts';

/** A supply stop that may fail: with all that it gives of both commodities at once. */
export interface FailingStop {
  /** Metres along the route, of its first supply. */
  atM: number;
  edges: ReadonlySet<SupplyEdge>;
}

/** The supplies of both commodities that lie close together, as stops in route order. */
export function failingStops({ sides }: Pick<CarryProblem, 'sides'>): FailingStop[] {
  const stops: { atM: number; edges: Set<SupplyEdge> }[] = [];
  const edges = COMMODITIES.flatMap((commodity) => sides[commodity].edges)
    .filter(({ kind }) => kind === 'passing')
    .sort((a, b) => a.atM - b.atM);
  for (const edge of edges) {
    const open = stops.at(-1);
    if (open !== undefined && edge.atM - open.atM <= STOP_SPAN_M) open.edges.add(edge);
    else stops.push({ atM: edge.atM, edges: new Set([edge]) });
  }
  return stops;
}
