import type { Edge } from '../../gaps/course/course.ts';

/** A supply, start or end as answers have it; metres along the route. */
export type PlanEdge = Readonly<Pick<Edge, 'kind' | 'id' | 'name' | 'atM' | 'detourM' | 'evidence'>>;

/** Without what only the reckoning needs. */
export const planEdge = ({ kind, id, name, atM, detourM, evidence }: Edge): PlanEdge => ({
  kind,
  id,
  name,
  atM,
  detourM,
  evidence,
});
