import type { Analysis, Passing, Rescue } from '../../server/contract/analysis.ts';
import type { AnalysisReply, SupplyMark } from '../../server/contract/answers/map.ts';
import type { Commodity, Reason } from '../../server/contract/common.ts';
import { EVIDENCE_WORDS } from '../words/words.ts';

/** One commodity at a supply point: how it is reckoned with, and every place where the route comes by. */
export interface SupplyFacts {
  commodity: Commodity;
  kind: string;
  counts: boolean;
  /** In the page's words. */
  evidence: string;
  waterClass: Passing['waterClass'];
  reasons: Reason[];
  /** In route order. */
  passings: { atKm: number; detourKm: number; offRouteKm: number }[];
  /** Off the corridor, listed because a short stretch could be rescued from it. */
  rescueOnly: boolean;
}

/** All that the reply knows about one supply point, for its card. */
export interface SupplyPointFacts {
  id: string;
  name: string | null;
  at: [number, number];
  commodities: SupplyFacts[];
  tags: [string, string][];
}

/** The point's facts; null when the reply does not draw it. */
export function supplyFacts(reply: AnalysisReply, id: string): SupplyPointFacts | null {
  const marks = reply.map.supplies.features.filter((feature) => feature.properties.id === id);
  const [lon, lat] = marks[0]?.geometry.coordinates ?? [];
  if (lon === undefined || lat === undefined) return null;
  const commodities = marks.map(({ properties }) => factsOf(reply.analysis, properties));
  const tags = new Map(marks.flatMap(({ properties }) => Object.entries(properties.tags)));
  return {
    id,
    name: marks.find(({ properties }) => properties.name !== null)?.properties.name ?? null,
    at: [lon, lat],
    commodities,
    tags: [...tags].sort(([a], [b]) => (a < b ? -1 : 1)),
  };
}

/** Of a mark, which tells it as text. */
const evidenceWords = (evidence: string): string =>
  new Map<string, string>(Object.entries(EVIDENCE_WORDS)).get(evidence) ?? evidence;

function factsOf(analysis: Analysis, mark: SupplyMark): SupplyFacts {
  const { commodity, kind, counts, evidence } = mark;
  const passings = analysis.passings.filter(
    (passing) => passing.id === mark.id && passing.commodity === commodity,
  );
  const rescues: Rescue[] = analysis[commodity].gaps
    .flatMap((gap) => gap.rescue)
    .filter((rescue) => rescue.id === mark.id);
  const seen: readonly (Passing | Rescue)[] = passings.length > 0 ? passings : rescues.slice(0, 1);
  const reasons = new Map(seen.flatMap((passing) => passing.reasons).map((reason) => [reason.code, reason]));
  return {
    commodity,
    kind,
    counts,
    evidence: evidenceWords(evidence),
    waterClass: passings[0]?.waterClass,
    reasons: [...reasons.values()],
    passings: seen.map(({ atKm, detourKm, offRouteKm }) => ({ atKm, detourKm, offRouteKm })),
    rescueOnly: passings.length === 0 && rescues.length > 0,
  };
}
