import type { Surface } from '../../contract/surface.ts';
import type { SpanM } from '../quantity/span.ts';

/** A stretch of the route of one surface, metres along it. */
export interface SurfaceSpan {
  fromM: number;
  toM: number;
  surface: Surface;
  /** By how much the way is longer than the line, percent. */
  allowancePercent: number;
}

/**
 * How much longer a way is than its line, percent. The design's rule: 3 % road, 10 % track, 30 % open ground or
 * dunes (all ours). Sand and salt are taken as open ground, rock and mud as tracks. Where the surface is unknown the
 * trip's own `allowancePercent` holds (5 % by default).
 */
export const ALLOWANCE_PERCENT: Record<Exclude<Surface, 'unknown'>, number> = {
  sealed: 3,
  gravel: 3,
  track: 10,
  sand: 30,
  rock: 10,
  mud: 10,
  salt: 30,
};

/** A stretch of which a trip tells the surface, and its allowance where that is the trip's own. */
export interface SurfaceStretch extends SpanM {
  readonly surface: Surface;
  readonly allowancePercent?: number;
}

/** What a trip says of its surfaces. */
export interface SurfaceFacts {
  surfaces: readonly SurfaceStretch[];
  /** Holds where the surface is unknown, and for the way off the route. */
  allowancePercent: number;
}

/**
 * The surfaces of a route of `lengthM` metres: spans in order that tile it, neighbours alike joined. Where entries
 * overlap the later one holds; what no entry covers is `unknown`; what lies past the end is left out.
 */
export function surfaceSpans(lengthM: number, facts: SurfaceFacts): SurfaceSpan[] {
  const entries = facts.surfaces.map((entry) => ({
    fromM: Math.min(lengthM, entry.fromM),
    toM: Math.min(lengthM, entry.toM),
    surface: entry.surface,
    allowancePercent: entry.allowancePercent ?? allowanceOf(entry.surface, facts),
  }));
  const places = [...new Set([0, lengthM, ...entries.flatMap((entry) => [entry.fromM, entry.toM])])].sort(
    (a, b) => a - b,
  );
  const spans: SurfaceSpan[] = [];
  let fromM = 0;
  for (const toM of places.slice(1)) {
    const beginM = fromM;
    fromM = toM;
    const entry = entries.findLast((one) => one.fromM <= beginM && toM <= one.toM);
    const { surface, allowancePercent } = entry ?? {
      surface: 'unknown',
      allowancePercent: facts.allowancePercent,
    };
    const last = spans.at(-1);
    if (last?.surface === surface && last.allowancePercent === allowancePercent) last.toM = toM;
    else spans.push({ fromM: beginM, toM, surface, allowancePercent });
  }
  return spans;
}

const allowanceOf = (surface: Surface, facts: SurfaceFacts): number =>
  surface === 'unknown' ? facts.allowancePercent : ALLOWANCE_PERCENT[surface];

/** Metres of each surface that occurs, in the order of the route. */
export function metresBySurface(spans: readonly SurfaceSpan[]): Map<Surface, number> {
  const metres = new Map<Surface, number>();
  for (const { surface, fromM, toM } of spans)
    metres.set(surface, (metres.get(surface) ?? 0) + (toM - fromM));
  return metres;
}
