import { toCartesian } from '../geodesy/cartesian.ts';
import { meridianRadiusM, primeVerticalRadiusM, RADIANS_PER_DEGREE } from '../geodesy/wgs84.ts';
import type { RouteIndex } from './route-index.ts';

/** Slack for steps that bulge out of the box of their vertices, metres (8 cm a step at 45 degrees, more near poles). */
const SLACK_M = 5;
/** Beyond this latitude a box of degrees is of no use: all longitudes are looked at. */
const BOX_LIMIT_DEGREES = 89;

/**
 * The stretches of the route that may come within `radiusM` of a place, in route order. All that do are there;
 * a few that do not may be.
 */
export function stretchesNear(index: RouteIndex, lon: number, lat: number, radiusM: number): number[] {
  const reachM = radiusM + SLACK_M;
  const north = reachM / meridianRadiusM(0) / RADIANS_PER_DEGREE;
  const furthest = Math.abs(lat) + north;
  const { boxes, balls } = index;
  let found: number[];
  if (furthest >= BOX_LIMIT_DEGREES) {
    found = boxes.search(-Infinity, lat - north, Infinity, lat + north);
  } else {
    const parallelM = primeVerticalRadiusM(0) * Math.cos(furthest * RADIANS_PER_DEGREE);
    const east = Math.min(180, reachM / parallelM / RADIANS_PER_DEGREE);
    found = [];
    const firstTurn = Math.ceil((boxes.minX - lon - east) / 360);
    const lastTurn = Math.floor((boxes.maxX - lon + east) / 360);
    for (let turn = firstTurn; turn <= lastTurn; turn += 1) {
      const middle = lon + 360 * turn;
      const hits = boxes.search(middle - east, lat - north, middle + east, lat + north);
      if (found.length === 0) found = hits;
      else found.push(...hits);
    }
  }
  const { x, y, z } = toCartesian(lon, lat);
  const near = found.filter((k) => {
    const o = 4 * k;
    const away = Math.hypot(balls[o]! - x, balls[o + 1]! - y, balls[o + 2]! - z);
    return away - balls[o + 3]! <= reachM;
  });
  near.sort((a, b) => a - b);
  // A stretch that lies across two turns of the globe could be found twice.
  return lastOfEach(near);
}

function lastOfEach(sorted: number[]): number[] {
  for (let i = 1; i < sorted.length; i += 1) {
    if (sorted[i] === sorted[i - 1]) return [...new Set(sorted)];
  }
  return sorted;
}
