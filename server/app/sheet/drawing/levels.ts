import type { Commodity } from '../../../contract/common.ts';
import type { PlannedTrip } from '../../plan-trip.ts';

/** What is aboard at a place; two at one place are a fill, a pour or a drop. */
export interface LevelAt {
  readonly atKm: number;
  readonly tankL: number;
  /** With cans. */
  readonly totalL: number;
}

/** A stretch of the strip, with what is aboard along it and where that is no longer enough. */
export interface LevelRun {
  readonly levels: readonly LevelAt[];
  readonly reserve: { readonly fromKm: number; readonly toKm: number } | null;
  readonly dry: { readonly fromKm: number; readonly toKm: number } | null;
}

/** As the plan has it; without one as the gaps have it, cans empty. */
export function levelRuns({ analysis, plan }: PlannedTrip, commodity: Commodity): LevelRun[] {
  if (plan.status === 'found') return [{ levels: plan.levels[commodity], reserve: null, dry: null }];
  return analysis[commodity].gaps.map(({ levels, runsDryKm, reserveFromKm, departL, reserveL, from, to }) => {
    const dryKm = runsDryKm ?? (departL <= 0 ? from.atKm : null);
    const reserveKm = reserveFromKm ?? (departL < reserveL ? from.atKm : null);
    const endKm = dryKm ?? to.atKm;
    return {
      levels: levels.map(({ atKm, litres }) => ({
        atKm,
        tankL: Math.max(0, litres),
        totalL: Math.max(0, litres),
      })),
      reserve: reserveKm === null || reserveKm >= endKm ? null : { fromKm: reserveKm, toKm: endKm },
      dry: dryKm === null ? null : { fromKm: dryKm, toKm: to.atKm },
    };
  });
}

/** The stretches of the route of which no extract would show a supply. */
export function withoutCover(
  { analysis }: PlannedTrip,
  commodity: Commodity,
): { fromKm: number; toKm: number }[] {
  const { cover } = analysis[commodity];
  const open: { fromKm: number; toKm: number }[] = [];
  let reachedKm = 0;
  for (const { fromKm, toKm } of cover.toSorted((a, b) => a.fromKm - b.fromKm)) {
    if (fromKm > reachedKm) open.push({ fromKm: reachedKm, toKm: fromKm });
    reachedKm = Math.max(reachedKm, toKm);
  }
  const endKm = analysis.route.lengthKm;
  return [...open, { fromKm: reachedKm, toKm: endKm }].filter(({ fromKm, toKm }) => toKm - fromKm > 0.05);
}
