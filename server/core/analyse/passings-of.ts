import type { Passing } from '../../contract/analysis.ts';
import { findPassings } from '../route/passings.ts';
import type { RouteLine } from '../route/route-line.ts';
import type { SupplyPoint } from '../supply/points/supply-point.ts';

/** Every passing of every point inside the corridor, counting or not, in route order; metres in, km out. */
export function passingsOf(
  route: RouteLine,
  points: readonly SupplyPoint[],
  corridorM: number,
  detourFactor: number,
): Passing[] {
  return findPassings(route, points, corridorM)
    .map((place): Passing => {
      const { tags: _tags, ...point } = points[place.point]!;
      const offRouteKm = place.offM / 1000;
      return { ...point, atKm: place.atM / 1000, offRouteKm, detourKm: offRouteKm * detourFactor };
    })
    .sort(
      (a, b) =>
        a.atKm - b.atKm || a.detourKm - b.detourKm || order(a.id, b.id) || order(a.commodity, b.commodity),
    );
}

/** The same list in whatever order extracts list their objects. */
const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
