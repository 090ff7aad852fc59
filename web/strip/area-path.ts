import type { Gap } from '../../server/contract/analysis.ts';
import { dryStartKm, litresAt, reserveStartKm } from './levels.ts';

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
export function levelPoints(gap: Gap, fromKm: number, toKm: number): LevelPoint[] {
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

export function gapAreas(gap: Gap, scale: HalfScale): GapAreas {
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

/** Along the level to the far end, and straight back along the road. */
function areaPath(points: readonly LevelPoint[], { baseX, pxPerLitre, yOfKm }: HalfScale): string {
  const corner = (x: number, atKm: number) => `${toHundredths(x)},${toHundredths(yOfKm(atKm))}`;
  const level = points.map(({ litres, atKm }) => corner(baseX + litres * pxPerLitre, atKm));
  const road = [points.at(-1)!, points[0]!].map(({ atKm }) => corner(baseX, atKm));
  return `M${[...level, ...road].join('L')}Z`;
}

const toHundredths = (px: number): number => Math.round(px * 100) / 100;
