import type { PlanEdge } from '../../../contract/plan.ts';
import type { EdgeM } from '../../gaps/course.ts';

export const edgeOf = ({ kind, id, name, atM, detourM, evidence }: EdgeM): PlanEdge => ({
  kind,
  id,
  name,
  atKm: atM / 1000,
  detourKm: detourM / 1000,
  evidence,
});

export const placeText = ({
  kind,
  name,
  atKm,
}: {
  kind: string;
  name: string | null;
  atKm: number;
}): string => `${name ?? (kind === 'passing' ? 'the supply' : `the ${kind}`)} (km ${Math.round(atKm)})`;
