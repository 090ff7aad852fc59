import type { EdgeM } from '../../gaps/course.ts';

/** A supply, start or end as answers have it; metres along the route. */
export type PlanEdge = Readonly<Pick<EdgeM, 'kind' | 'id' | 'name' | 'atM' | 'detourM' | 'evidence'>>;

/** Without what only the reckoning needs. */
export const planEdge = ({ kind, id, name, atM, detourM, evidence }: EdgeM): PlanEdge => ({
  kind,
  id,
  name,
  atM,
  detourM,
  evidence,
});
