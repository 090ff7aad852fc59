import type { PlanLevel } from '../../server/contract/plan.ts';
import { dryStartKm, litresAt, reserveStartKm } from '../levels/levels.ts';
import type { StripGap } from '../levels/plan-report.ts';

/** Where a half of the strip lies: `baseX` at the road's edge, the area growing by `pxPerLitre` (negative: leftwards). */
export interface HalfScale {
  baseX: number;
  pxPerLitre: number;
  yOfKm(km: number): number;
}

export interface LevelPoint {
  atKm: number;
  litres: number;
}

/** The gap's level between two places, with the corners between them; steps (two litres at one km) are kept. */
export function levelPoints(gap: StripGap, fromKm: number, toKm: number): LevelPoint[] {
  if (toKm <= fromKm) return [];
  // The last of several at the near end, the first of several at the far end.
  const atStart = gap.levels.filter((level) => level.atKm === fromKm).at(-1)?.litres ?? litresAt(gap, fromKm);
  const atEnd = gap.levels.find((level) => level.atKm === toKm)?.litres ?? litresAt(gap, toKm);
  const between = gap.levels.filter((level) => level.atKm > fromKm && level.atKm < toKm);
  return [{ atKm: fromKm, litres: atStart }, ...between, { atKm: toKm, litres: atEnd }].map((point) => ({
    atKm: point.atKm,
    litres: Math.max(0, point.litres),
  }));
}

/** The drawing of one gap: its area above the reserve, its area into it, and the stretch that is dry. */
export interface GapAreas {
  left: string | null;
  reserve: string | null;
  dry: { fromKm: number; toKm: number } | null;
}

export function gapAreas(gap: StripGap, scale: HalfScale): GapAreas {
  const dryKm = Math.min(dryStartKm(gap), gap.to.atKm);
  const reserveKm = Math.min(reserveStartKm(gap), dryKm);
  const pathOf = (fromKm: number, toKm: number): string | null => {
    const points = levelPoints(gap, fromKm, toKm);
    return points.length === 0 ? null : areaPath(points, scale);
  };
  return {
    left: pathOf(gap.from.atKm, reserveKm),
    reserve: pathOf(reserveKm, dryKm),
    dry: dryKm < gap.to.atKm ? { fromKm: dryKm, toKm: gap.to.atKm } : null,
  };
}

/** The drawing of a plan's levels: the tanks from the road outwards, and beyond them each can as a band of its own. */
export function planAreas(
  levels: readonly PlanLevel[],
  scale: HalfScale,
): { tanks: string | null; cans: string[] } {
  const cans: string[] = [];
  const most = Math.max(0, ...levels.map(({ cansL }) => cansL.length));
  for (let can = 0; can < most; can++) {
    let inner: LevelPoint[] = [];
    let outer: LevelPoint[] = [];
    for (const level of [...levels, null]) {
      const litres = level?.cansL[can] ?? 0;
      if (level !== null && litres > 0) {
        const below = level.cansL.slice(0, can).reduce((sum, each) => sum + each, level.tankL);
        inner.push({ atKm: level.atKm, litres: below });
        outer.push({ atKm: level.atKm, litres: below + litres });
      } else if (outer.length > 0) {
        cans.push(areaPath(outer, scale, inner));
        inner = [];
        outer = [];
      }
    }
  }
  const tanks = levels.map(({ atKm, tankL }) => ({ atKm, litres: tankL }));
  return { tanks: tanks.length === 0 ? null : areaPath(tanks, scale), cans };
}

/** How far the water that is fit to drink reaches; null where there is none kept for washing beyond it. */
export function drinkableLine(
  levels: readonly PlanLevel[],
  { baseX, pxPerLitre, yOfKm }: HalfScale,
): string | null {
  if (!levels.some(({ washingL = 0 }) => washingL > 0)) return null;
  const corners = levels.flatMap(({ atKm, drinkableL }) =>
    drinkableL === undefined
      ? []
      : [`${toHundredths(baseX + drinkableL * pxPerLitre)},${toHundredths(yOfKm(atKm))}`],
  );
  return corners.length === 0 ? null : `M${corners.join('L')}`;
}

/** Along the level to the far end, and back: straight along the road, or along another level. */
function areaPath(
  points: readonly LevelPoint[],
  { baseX, pxPerLitre, yOfKm }: HalfScale,
  back: readonly LevelPoint[] = alongTheRoad(points),
): string {
  const corners = [...points, ...back.toReversed()].map(
    ({ litres, atKm }) => `${toHundredths(baseX + litres * pxPerLitre)},${toHundredths(yOfKm(atKm))}`,
  );
  return `M${corners.join('L')}Z`;
}

/** The way back along the road, from end to end. */
const alongTheRoad = (points: readonly LevelPoint[]): LevelPoint[] =>
  [...points.slice(0, 1), ...points.slice(-1)].map(({ atKm }) => ({ atKm, litres: 0 }));

const toHundredths = (px: number): number => Math.round(px * 100) / 100;
