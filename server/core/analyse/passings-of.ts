import { at } from '../lists/at.ts';
import { findPassings } from '../route/passings/passings.ts';
import type { RouteLine } from '../route/route-line.ts';
import type { Passing } from '../supply/points/passing.ts';
import type { SupplyPoint } from '../supply/points/supply-point.ts';
import { bearingTags } from '../supply/tags/bearing.ts';

/** Every passing of every point inside the corridor, counting or not, in route order. */
export function passingsOf(
  route: RouteLine,
  points: readonly SupplyPoint[],
  corridorM: number,
  detourFactor: number,
): Passing[] {
  return findPassings(route, points, corridorM)
    .map((place): Passing => {
      const { tags, mappedTags = tags, ...point } = at(points, place.point);
      const { atM, offM } = place;
      return {
        ...point,
        tags: bearingTags(mappedTags),
        atM,
        offRouteM: offM,
        detourM: offM * detourFactor,
      };
    })
    .sort(inRouteOrder);
}

/** As passings are listed. */
export const inRouteOrder = (a: Passing, b: Passing): number =>
  a.atM - b.atM || a.detourM - b.detourM || order(a.id, b.id) || order(a.commodity, b.commodity);

/** The same list in whatever order extracts list their objects. */
const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
