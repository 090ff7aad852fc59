import type { Span } from '../../server/contract/common.ts';
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
  /** Of the bars on one side of the road. */
  barPx: number;
  /** Of the column of labels beyond them. */
  labelPx: number;
  /** From the bars to the labels: room for the bar of cans, where there is one. */
  labelGapPx: number;
  /** Where the nights' marks stand, between the road and the bars of water. */
  nightX: number;
  /** Only the shortest words fit beside the road. */
  narrow: boolean;
  /** What of the route is on the strip. */
  shown: Span;
  /** Beyond what is shown it runs on outside the strip. */
  yOfKm(km: number): number;
  /** The place at a height, kept on what is shown. */
  kmOfY(yPx: number): number;
  fuel: HalfScale;
  water: HalfScale;
}

const SIDE_PX = 5;
/** Room for the heads and for the name of the route's end, and for the name of its start. */
const HEAD_PX = 46;
/** What a plan's drawing means, under the heads. */
const KEY_PX = 16;
const FOOT_PX = 26;
const ROAD_PX = 34;
/** Clear ground between the road and the areas; the nights stand in that of water. */
const VERGE_PX = 4;
const NIGHTS_PX = 12;
const NARROW_BELOW_PX = 110;
/** The bars' share of a side; labels have the rest. */
const BAR_SHARE = 0.32;
const BAR_MOST_PX = 110;
const LABEL_GAP_PX = 8;
const CANS_GAP_PX = 15;

export function stripFrame(analysis: StripAnalysis, size: Size, shown: Span): StripFrame {
  const { lengthKm } = analysis.route;
  const isPlanned = analysis.fuel.plan !== undefined;
  const topPx = HEAD_PX + (isPlanned ? KEY_PX : 0);
  const bottomPx = Math.max(topPx + 1, size.heightPx - FOOT_PX);
  const pxPerKm = (bottomPx - topPx) / Math.max(shown.toKm - shown.fromKm, 1e-9);
  const sidePx = Math.max(1, (size.widthPx - ROAD_PX - 2 * VERGE_PX - NIGHTS_PX) / 2);
  const roadLeftPx = sidePx + VERGE_PX;
  const roadRightPx = roadLeftPx + ROAD_PX;
  const barPx = Math.min(BAR_MOST_PX, sidePx * BAR_SHARE);
  const labelGapPx = isPlanned ? CANS_GAP_PX : LABEL_GAP_PX;
  const yOfKm = (atKm: number): number => bottomPx - (within(atKm, 0, lengthKm) - shown.fromKm) * pxPerKm;
  const half = (baseX: number, fullL: number, direction: 1 | -1): HalfScale => ({
    baseX,
    pxPerLitre: fullL > 0 ? (direction * barPx) / fullL : 0,
    yOfKm,
  });
  return {
    ...size,
    topPx,
    bottomPx,
    roadLeftPx,
    roadRightPx,
    barPx,
    labelPx: Math.max(1, sidePx - barPx - labelGapPx - SIDE_PX),
    labelGapPx,
    nightX: roadRightPx + VERGE_PX / 2 + NIGHTS_PX / 2,
    narrow: sidePx < NARROW_BELOW_PX,
    shown,
    yOfKm,
    kmOfY: (yPx) => within(shown.fromKm + (bottomPx - yPx) / pxPerKm, shown.fromKm, shown.toKm),
    fuel: half(roadLeftPx - VERGE_PX, fullLitres(analysis.fuel), -1),
    water: half(roadRightPx + VERGE_PX + NIGHTS_PX, fullLitres(analysis.water), 1),
  };
}

const within = (atKm: number, fromKm: number, toKm: number): number => Math.min(Math.max(atKm, fromKm), toKm);
