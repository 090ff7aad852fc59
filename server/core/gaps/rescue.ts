import type { Gap, Rescue } from '../../contract/analysis.ts';
import type { Commodity, Evidence } from '../../contract/common.ts';
import { findPassings } from '../route/passings.ts';
import type { RouteLine } from '../route/route-line.ts';
import type { SupplyPoint } from '../supply/points/supply-point.ts';

/** How far off the route to look for what could rescue a short gap (design). */
const RESCUE_M = 50_000;
/** How many are listed for a gap. */
const MOST_RESCUES = 5;

const STRENGTH: Record<Evidence, number> = { confirmed: 0, stated: 1, implied: 2, doubtful: 3 };

/**
 * For every gap that is short: the nearest points of its commodity up to 50 km off the route that the gap does not
 * use already, those that count first, then the better known, then the nearer. Gaps that are not short get none.
 */
export function withRescues(
  gaps: readonly Gap[],
  route: RouteLine,
  points: readonly SupplyPoint[],
  commodity: Commodity,
  detourFactor: number,
): Gap[] {
  if (!gaps.some((gap) => gap.verdict === 'short')) return [...gaps];
  const used = new Set(gaps.flatMap((gap) => [gap.from.id, gap.to.id]));
  const candidates = points.filter(
    (point) => point.commodity === commodity && !used.has(point.id) && point.waterClass !== 'none',
  );
  const places = findPassings(route, candidates, RESCUE_M);
  return gaps.map((gap) => {
    if (gap.verdict !== 'short') return gap;
    const nearest = new Map<string, Rescue>();
    for (const place of places) {
      const atKm = place.atM / 1000;
      if (atKm < gap.from.atKm || atKm > gap.to.atKm) continue;
      const point = candidates[place.point]!;
      const offRouteKm = place.offM / 1000;
      const known = nearest.get(point.id);
      if (known !== undefined && known.offRouteKm <= offRouteKm) continue;
      nearest.set(point.id, {
        id: point.id,
        name: point.name,
        kind: point.kind,
        atKm,
        offRouteKm,
        detourKm: offRouteKm * detourFactor,
        evidence: point.evidence,
        counts: point.counts,
        reasons: point.reasons,
      });
    }
    const rescue = [...nearest.values()]
      .sort(
        (a, b) =>
          Number(b.counts) - Number(a.counts) ||
          STRENGTH[a.evidence] - STRENGTH[b.evidence] ||
          a.offRouteKm - b.offRouteKm,
      )
      .slice(0, MOST_RESCUES);
    return { ...gap, rescue };
  });
}
