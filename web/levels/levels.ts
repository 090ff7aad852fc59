import type { PlanLevel } from '../../server/contract/plan.ts';
import { aboardAt, type StripGap, type StripReport } from './plan-report.ts';

export type LevelState = 'left' | 'reserve' | 'dry';

/** What is aboard at one place of the route. */
export interface LevelAt {
  /** Never below zero. */
  litres: number;
  state: LevelState;
  gapIndex: number;
  /** An extract covers this place for the commodity. */
  covered: boolean;
  /** What of it is in tanks and what in cans, where it goes by a plan. */
  aboard: PlanLevel | null;
}

/** Index of the gap that holds `atKm`; at a supply point the one that begins there; -1 without gaps. */
export function gapIndexAt(report: StripReport, atKm: number): number {
  const index = report.gaps.findLastIndex(({ from }) => from.atKm <= atKm);
  return report.gaps.length === 0 ? -1 : Math.max(0, index);
}

/** Litres at `atKm` by the gap's own straight lines, not below zero; outside the gap its nearest end. */
export function litresAt(gap: StripGap, atKm: number): number {
  const { levels } = gap;
  const first = levels[0];
  const last = levels.at(-1);
  if (first === undefined || last === undefined) return Math.max(0, gap.departL);
  if (atKm < first.atKm) return Math.max(0, first.litres);
  if (atKm >= last.atKm) return Math.max(0, last.litres);
  const a = levels.findLast((level) => level.atKm <= atKm) ?? first;
  const b = levels.find((level) => level.atKm > atKm) ?? last;
  const t = (atKm - a.atKm) / (b.atKm - a.atKm);
  return Math.max(0, a.litres + t * (b.litres - a.litres));
}

/** From where on the gap eats into its reserve; its far end when it does not. */
export function reserveStartKm(gap: StripGap): number {
  if (gap.reserveFromKm !== null) return gap.reserveFromKm;
  return gap.departL < gap.reserveL ? gap.from.atKm : gap.to.atKm;
}

/** From where on nothing is left in the gap; its far end when something is. */
export function dryStartKm(gap: StripGap): number {
  if (gap.runsDryKm !== null) return gap.runsDryKm;
  return gap.departL <= 0 ? gap.from.atKm : gap.to.atKm;
}

export const isCovered = (report: StripReport, atKm: number): boolean =>
  report.cover.some((span) => atKm >= span.fromKm && atKm <= span.toKm);

/** The level at one place; null for a report without gaps. */
export function levelAt(report: StripReport, atKm: number): LevelAt | null {
  const gapIndex = gapIndexAt(report, atKm);
  const gap = report.gaps[gapIndex];
  if (gap === undefined) return null;
  const covered = isCovered(report, atKm);
  if (report.plan !== undefined) {
    const aboard = aboardAt(report.plan.levels, atKm);
    return aboard === null ? null : { litres: aboard.totalL, state: 'left', gapIndex, covered, aboard };
  }
  const litres = litresAt(gap, atKm);
  const dry = dryStartKm(gap);
  const atEnd = atKm >= gap.to.atKm;
  let state: LevelState = 'left';
  if (atKm > dry || (atEnd && gap.arriveL < 0)) state = 'dry';
  else if (atKm > reserveStartKm(gap) || (atEnd && gap.marginL < 0)) state = 'reserve';
  return { litres, state, gapIndex, covered, aboard: null };
}

/** Litres at full width of the area: the tanks, or more where cans were filled as well. */
export const fullLitres = (report: StripReport): number =>
  report.gaps.reduce((most, gap) => Math.max(most, gap.departL), report.capacityL);

/** The stretches of the route that no extract covers for this commodity. */
export function stretchesWithoutCover(
  report: StripReport,
  lengthKm: number,
): { fromKm: number; toKm: number }[] {
  const covered = [...report.cover].sort((a, b) => a.fromKm - b.fromKm);
  const open: { fromKm: number; toKm: number }[] = [];
  let reachedKm = 0;
  for (const span of covered) {
    if (span.fromKm > reachedKm) open.push({ fromKm: reachedKm, toKm: Math.min(span.fromKm, lengthKm) });
    reachedKm = Math.max(reachedKm, span.toKm);
  }
  if (reachedKm < lengthKm) open.push({ fromKm: reachedKm, toKm: lengthKm });
  return open.filter((span) => span.toKm > span.fromKm);
}
