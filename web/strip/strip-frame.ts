import type { Size } from '../kit/hooks/use-size.ts';
import { fullLitres } from '../levels/levels.ts';
import type { StripAnalysis } from '../levels/plan-report.ts';
import type { HalfScale } from './area-path.ts';

/** Where everything of the strip lies, px; km run up the page. */
export interface StripFrame extends Size {
  topPx: number;
  bottomPx: number;
  roadLeftPx: number;
  roadRightPx: number;
  halfWidthPx: number;
  /** Only the shortest words fit beside the road. */
  narrow: boolean;
  yOfKm(km: number): number;
  /** The place at a height, kept on the route. */
  kmOfY(yPx: number): number;
  fuel: HalfScale;
  water: HalfScale;
}

const SIDE_PX = 12;
/** Room for the heads and for the name of the route's end, and for the name of its start. */
const HEAD_PX = 46;
/** What a plan's drawing means, under the heads. */
const KEY_PX = 16;
const FOOT_PX = 26;
const ROAD_PX = 34;
/** Clear ground between the road and the areas. */
const VERGE_PX = 4;
const NARROW_BELOW_PX = 110;

export function stripFrame(analysis: StripAnalysis, size: Size): StripFrame {
  const { lengthKm } = analysis.route;
  const topPx = HEAD_PX + (analysis.fuel.plan === undefined ? 0 : KEY_PX);
  const bottomPx = Math.max(topPx + 1, size.heightPx - FOOT_PX);
  const pxPerKm = (bottomPx - topPx) / Math.max(lengthKm, 1e-9);
  const roadLeftPx = (size.widthPx - ROAD_PX) / 2;
  const roadRightPx = roadLeftPx + ROAD_PX;
  const halfWidthPx = Math.max(1, roadLeftPx - VERGE_PX - SIDE_PX);
  const yOfKm = (atKm: number): number => bottomPx - within(atKm, lengthKm) * pxPerKm;
  const half = (baseX: number, fullL: number, direction: 1 | -1): HalfScale => ({
    baseX,
    pxPerLitre: fullL > 0 ? (direction * halfWidthPx) / fullL : 0,
    yOfKm,
  });
  return {
    ...size,
    topPx,
    bottomPx,
    roadLeftPx,
    roadRightPx,
    halfWidthPx,
    narrow: halfWidthPx < NARROW_BELOW_PX,
    yOfKm,
    kmOfY: (yPx) => within((bottomPx - yPx) / pxPerKm, lengthKm),
    fuel: half(roadLeftPx - VERGE_PX, fullLitres(analysis.fuel), -1),
    water: half(roadRightPx + VERGE_PX, fullLitres(analysis.water), 1),
  };
}

/** A place kept on the route. */
const within = (atKm: number, lengthKm: number): number => Math.min(Math.max(atKm, 0), lengthKm);
