import type { Commodity, Evidence } from '../../contract/common.ts';
import { at } from '../lists/at.ts';
import { findPassings } from '../route/passings.ts';
import type { RouteLine } from '../route/route-line.ts';
import type { SupplyPoint } from '../supply/points/supply-point.ts';
import type { Gap, Rescue } from './gap.ts';

/** How far off the route to look for what could rescue a short gap (design). */
const RESCUE_M = 50_000;
/** How many are listed for a gap. */
const MOST_RESCUES = 5;

const STRENGTH: Record<Evidence, number> = { confirmed: 0, stated: 1, implied: 2, doubtful: 3 };

/** Where rescues are sought, and how much farther a road is than the straight line. */
export interface RescueFacts {
  route: RouteLine;
  points: readonly SupplyPoint[];
  commodity: Commodity;
  detourFactor: number;
}

/**
 * For every gap that is short: the nearest points of its commodity up to 50 km off the route that the gap does not
 * use already, those that count first, then the better known, then the nearer. Gaps that are not short get none.
 */
export function withRescues(
  gaps: readonly Gap[],
  { route, points, commodity, detourFactor }: RescueFacts,
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
      const { atM, offM } = place;
      if (atM < gap.from.atM || atM > gap.to.atM) continue;
      const point = at(candidates, place.point);
      const known = nearest.get(point.id);
      if (known !== undefined && known.offRouteM <= offM) continue;
      nearest.set(point.id, {
        id: point.id,
        name: point.name,
        kind: point.kind,
        atM,
        offRouteM: offM,
        detourM: offM * detourFactor,
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
          a.offRouteM - b.offRouteM,
      )
      .slice(0, MOST_RESCUES);
    return { ...gap, rescue };
  });
}
