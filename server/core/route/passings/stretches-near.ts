import { meridianRadiusM, primeVerticalRadiusM, RADIANS_PER_DEGREE } from '../../geodesy/wgs84.ts';
import { type RouteIndex, toBallM } from '../route-index.ts';
import type { Viewpoint } from './viewpoint.ts';

/** Slack for steps that bulge out of the box of their vertices, metres (8 cm a step at 45 degrees, more near poles). */
const SLACK_M = 5;
/** Beyond this latitude a box of degrees is of no use: all longitudes are looked at. */
const BOX_LIMIT_DEGREES = 89;

/**
 * The stretches of the route that may come within `radiusM` of a place, in route order. All that do are there;
 * a few that do not may be.
 */
export function stretchesNear(index: RouteIndex, from: Viewpoint, radiusM: number): number[] {
  const reachM = radiusM + SLACK_M;
  const { balls } = index;
  const near = stretchesAround(index, from, reachM).filter(
    (stretch) => toBallM(balls, stretch, from) <= reachM,
  );
  near.sort((a, b) => a - b);
  // A stretch that lies across two turns of the globe is found twice.
  return near.filter((stretch, place) => stretch !== near[place - 1]);
}

/** Those whose boxes come near, on whatever turn of the globe the route is there. */
function stretchesAround(index: RouteIndex, { lon, lat }: Viewpoint, reachM: number): number[] {
  const { boxes } = index;
  const north = reachM / meridianRadiusM(0) / RADIANS_PER_DEGREE;
  const furthest = Math.abs(lat) + north;
  if (furthest >= BOX_LIMIT_DEGREES) {
    return boxes.search(-Infinity, lat - north, Infinity, lat + north);
  }
  const parallelM = primeVerticalRadiusM(0) * Math.cos(furthest * RADIANS_PER_DEGREE);
  const east = Math.min(180, reachM / parallelM / RADIANS_PER_DEGREE);
  const stretches: number[] = [];
  const lastTurn = Math.floor((boxes.maxX - lon + east) / 360);
  for (let turn = Math.ceil((boxes.minX - lon - east) / 360); turn <= lastTurn; turn += 1) {
    const middle = lon + 360 * turn;
    stretches.push(...boxes.search(middle - east, lat - north, middle + east, lat + north));
  }
  return stretches;
}
