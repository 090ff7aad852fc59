import { heightsOf } from '../../route/elevation.ts';
import type { RouteLine } from '../../route/route-line.ts';

/** The highest place of a route, metres; null where the height of any part of it is not known. */
export function routeTopM(route: Pick<RouteLine, 'atM' | 'eleM'>): number | null {
  if (route.eleM === null) return null;
  const { heights, unknownM } = heightsOf(route.atM, route.eleM);
  if (heights === null || unknownM > 0) return null;
  return heights.eleM.reduce((top, ele) => Math.max(top, ele), -Infinity);
}
