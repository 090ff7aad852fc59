import { SLACK } from '../../quantity/slack.ts';

/** What is aboard at a place of a stretch, and what the way back from there takes; straight lines between points. */
export interface WayPoint {
  /** Metres along the route. */
  readonly atM: number;
  /** All that is aboard. */
  readonly litres: number;
  /** From here to the supply behind, without reserve; null where the way cannot be driven back. */
  readonly backL: number | null;
}

/** A point between two, at a place between theirs. */
export function wayPointBetween(before: WayPoint, after: WayPoint, atM: number): WayPoint {
  if (before.atM === after.atM) return before;
  const share = (atM - before.atM) / (after.atM - before.atM);
  const between = (a: number, b: number) => a + share * (b - a);
  return {
    atM,
    litres: between(before.litres, after.litres),
    backL: backBetween(before, after, atM, between),
  };
}

/** Behind the last point from where it can be driven back nothing can. */
function backBetween(
  before: WayPoint,
  after: WayPoint,
  atM: number,
  between: (a: number, b: number) => number,
): number | null {
  if (before.backL === null) return null;
  if (after.backL === null) return atM > before.atM ? null : before.backL;
  return between(before.backL, after.backL);
}

type Between<Point> = (before: Point, after: Point, atM: number) => Point;

/** Places nearer to each other than this, metres, are one: a night and a turn-back point there differ by float noise. */
const SAME_M = 1e-3;

/** The points at a place, in order: those there, else one between its neighbours. */
export function pointsThere<Point extends Pick<WayPoint, 'atM'>>(
  points: readonly [Point, ...Point[]],
  atM: number,
  between: Between<Point>,
): readonly [Point, ...Point[]] {
  const [first, ...more] = points.filter((point) => Math.abs(point.atM - atM) <= SAME_M);
  if (first !== undefined) return [first, ...more];
  let [before] = points;
  for (const point of points) {
    if (point.atM > atM) return [point === points[0] ? point : between(before, point, atM)];
    before = point;
  }
  return [before];
}

/**
 * The last place, metres along, before which `leftL` stays at or above nothing all the way; null where it is below at
 * once. `leftL` is linear between points and null where nothing can be said, which counts as below.
 */
export function lastHolding<Point extends Pick<WayPoint, 'atM'>>(
  points: readonly Point[],
  leftL: (point: Point) => number | null,
): number | null {
  let before: { atM: number; left: number } | null = null;
  for (const point of points) {
    const left = leftL(point);
    if (left === null) return before?.atM ?? null;
    if (left < -SLACK) {
      if (before === null) return null;
      const share = Math.max(0, before.left) / (Math.max(0, before.left) - left);
      return before.atM + share * (point.atM - before.atM);
    }
    before = { atM: point.atM, left };
  }
  return before?.atM ?? null;
}

/** Litres above the reserve on going back from a point; null where the way cannot be driven back. */
export const overBack = (
  { keepBackL }: { readonly keepBackL: number },
  { litres, backL }: Pick<WayPoint, 'litres' | 'backL'>,
  lostL = 0,
): number | null => (backL === null ? null : litres - lostL - backL - keepBackL);
