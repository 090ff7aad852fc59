import type { Commodity, Evidence } from '../../contract/common.ts';
import type { LonLat } from '../geodesy/lon-lat.ts';
import { at } from '../lists/at.ts';
import { findPassings, type RoutePassing } from '../route/passings/passings.ts';
import type { RouteLine } from '../route/route-line.ts';
import type { SupplyPoint } from '../supply/points/supply-point.ts';
import { type FoundReason, withFurther } from '../supply/tags/reasons.ts';
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
  /** What stands against the straight way from a place of the route to a point. */
  reasonsOf: (sighting: Sighting) => readonly FoundReason[];
  /** The lowest evidence that counts. */
  level: Evidence;
}

/** A point as seen from a place of the route. */
interface Sighting extends LonLat {
  readonly id: string;
  readonly evidence: Evidence;
  readonly atM: number;
  readonly offRouteM: number;
}

/**
 * For every gap that is short: the nearest points of its commodity up to 50 km off the route that the gap does not
 * use already, those that count first, then the better known, then the nearer. Gaps that are not short get none.
 */
export function withRescues(gaps: readonly Gap[], facts: RescueFacts): Gap[] {
  const { route, points, commodity } = facts;
  if (!gaps.some((gap) => gap.verdict === 'short')) return [...gaps];
  const used = new Set(gaps.flatMap((gap) => [gap.from.id, gap.to.id]));
  const candidates = points.filter(
    (point) => point.commodity === commodity && !used.has(point.id) && point.waterClass !== 'none',
  );
  const places = findPassings(route, candidates, RESCUE_M);
  return gaps.map((gap) => {
    if (gap.verdict !== 'short') return gap;
    const nearest = new Map<string, RoutePassing>();
    for (const place of places) {
      const { atM, offM } = place;
      if (atM < gap.from.atM || atM > gap.to.atM) continue;
      const { id } = at(candidates, place.point);
      const known = nearest.get(id);
      if (known === undefined || offM < known.offM) nearest.set(id, place);
    }
    const rescue = [...nearest.values()]
      .map((place) => rescueBy(at(candidates, place.point), place, facts))
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

/** A point as what could rescue, judged from the place of the route that is nearest to it. */
function rescueBy(
  point: SupplyPoint,
  { atM, offM }: RoutePassing,
  { detourFactor, reasonsOf, level }: RescueFacts,
): Rescue {
  const { lon, lat, id, name, kind } = point;
  const sighting = { id, lon, lat, evidence: point.evidence, atM, offRouteM: offM };
  const { evidence, counts, reasons } = withFurther(point, reasonsOf(sighting), level);
  return { id, name, kind, atM, offRouteM: offM, detourM: offM * detourFactor, evidence, counts, reasons };
}
