import type { Bbox } from '../../../contract/common.ts';
import { numberAt } from '../../lists/at.ts';
import type { RouteLine } from '../route-line.ts';

/** Kilometres in a degree of latitude, the least on WGS 84, so that margins err wide. */
const KM_PER_DEGREE = 110.5;
/** A box goes along the route until it is so wide or high, degrees. Ours: some 70 boxes for 1,500 km. */
const BOX_DEG = 0.2;

/**
 * Boxes that together hold all that lies within some kilometres of a route whose vertices are at most 2 km apart, and
 * little more. None crosses the 180th meridian.
 */
export function boxesAlong({ lon, lat }: Pick<RouteLine, 'lon' | 'lat'>, marginKm: number): Bbox[] {
  const boxes: Bbox[] = [];
  let box: Bbox | null = null;
  for (let at = 0; at < lon.length; at += 1) {
    const [x, y] = [numberAt(lon, at), numberAt(lat, at)];
    const wider: Bbox =
      box === null
        ? [x, y, x, y]
        : [Math.min(box[0], x), Math.min(box[1], y), Math.max(box[2], x), Math.max(box[3], y)];
    if (box !== null && (wider[2] - wider[0] > BOX_DEG || wider[3] - wider[1] > BOX_DEG)) {
      boxes.push(box);
      box = [x, y, x, y];
    } else box = wider;
  }
  if (box !== null) boxes.push(box);
  return boxes.flatMap((one) => withMargin(one, marginKm));
}

/** A box with what lies around it, in two where that crosses the 180th meridian. */
function withMargin([west, south, east, north]: Bbox, marginKm: number): Bbox[] {
  // A vertex is at most 2 km from the next, which may lie in the next box.
  const marginLat = (marginKm + 2) / KM_PER_DEGREE;
  const poleward = Math.min(89.9, Math.max(Math.abs(south), Math.abs(north)) + marginLat);
  const marginLon = Math.min(180, marginLat / Math.cos((poleward * Math.PI) / 180));
  const [from, to] = [west - marginLon, east + marginLon];
  const [low, high] = [Math.max(-90, south - marginLat), Math.min(90, north + marginLat)];
  if (to - from >= 360) return [[-180, low, 180, high]];
  if (from < -180)
    return [
      [-180, low, to, high],
      [from + 360, low, 180, high],
    ];
  if (to > 180)
    return [
      [from, low, 180, high],
      [-180, low, to - 360, high],
    ];
  return [[from, low, to, high]];
}
