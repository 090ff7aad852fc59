import type { RoutePiece as DrawnPiece } from '../../contract/answers/map.ts';
import type { Commodity } from '../../contract/common.ts';
import type { Gap, Report } from '../gaps/gap.ts';
import { at } from '../lists/at.ts';
import type { SpanM } from '../quantity/span.ts';

/** A piece of the route in one state for one commodity, metres along. */
export type RoutePiece = Omit<DrawnPiece, 'fromKm' | 'toKm'> & SpanM;

/** Steps in which the drawn width follows what is left (ours): a twelfth is about a pixel of a 12 px line. */
const SHARE_STEPS = 12;

/**
 * The route in pieces of one state for one commodity, in route order: cut at the gaps' edges, where the level falls to
 * the reserve or to nothing, where cover begins or ends, and at each twelfth of the capacity. They tile the route.
 */
export function routePieces(report: Report, commodity: Commodity, lengthM: number): RoutePiece[] {
  const pieces: RoutePiece[] = [];
  for (const [index, gap] of report.gaps.entries()) {
    const cuts = cutsOf(gap, report, lengthM);
    for (let i = 0; i + 1 < cuts.length; i += 1) {
      const fromM = at(cuts, i);
      const toM = at(cuts, i + 1);
      const middleM = (fromM + toM) / 2;
      const piece: RoutePiece = {
        commodity,
        gap: index,
        verdict: gap.verdict,
        state: stateAt(gap, middleM),
        noCover: !report.cover.some((span) => span.fromM <= middleM && middleM <= span.toM),
        share: shareAt(gap.levels, middleM, report.capacityL),
        fromM,
        toM,
      };
      pieces.push(piece);
    }
  }
  return pieces;
}

/** Places at which a gap's drawing changes, its own edges first and last; a gap without length has none. */
function cutsOf(gap: Gap, report: Report, lengthM: number): number[] {
  const fromM = Math.max(0, gap.from.atM);
  const toM = Math.min(lengthM, gap.to.atM);
  if (!(toM > fromM)) return [];
  const inside = new Set<number>();
  const add = (atM: number | null) => {
    if (atM !== null && atM > fromM && atM < toM) inside.add(atM);
  };
  add(gap.reserveFromM);
  add(gap.runsDryM);
  for (const span of report.cover as SpanM[]) {
    add(span.fromM);
    add(span.toM);
  }
  for (const atM of shareSteps(gap, report.capacityL)) add(atM);
  return [fromM, ...[...inside].sort((a, b) => a - b), toM];
}

/** Where the level passes a twelfth of the capacity, by straight lines between the gap's levels. */
function shareSteps(gap: Gap, capacityL: number): number[] {
  const steps: number[] = [];
  if (!(capacityL > 0)) return steps;
  for (let i = 0; i + 1 < gap.levels.length; i += 1) {
    const from = at(gap.levels, i);
    const to = at(gap.levels, i + 1);
    const fallL = from.litres - to.litres;
    if (!(fallL > 0)) continue;
    for (let step = 1; step < SHARE_STEPS; step += 1) {
      const litres = (capacityL * step) / SHARE_STEPS;
      if (litres >= from.litres || litres <= to.litres) continue;
      steps.push(from.atM + ((from.litres - litres) / fallL) * (to.atM - from.atM));
    }
  }
  return steps;
}

function stateAt(gap: Gap, atM: number): RoutePiece['state'] {
  if (gap.runsDryM !== null && atM > gap.runsDryM) return 'dry';
  if (gap.reserveFromM !== null && atM > gap.reserveFromM) return 'reserve';
  return 'left';
}

/** What is left at a place as a share of the capacity, 0 to 1. */
function shareAt(levels: Gap['levels'], atM: number, capacityL: number): number {
  if (!(capacityL > 0)) return 0;
  let litres = levels[0]?.litres ?? 0;
  for (let i = 0; i + 1 < levels.length; i += 1) {
    const from = at(levels, i);
    const to = at(levels, i + 1);
    if (atM < from.atM) break;
    const step = to.atM - from.atM;
    const along = step > 0 ? Math.min(1, (atM - from.atM) / step) : 1;
    litres = from.litres + along * (to.litres - from.litres);
  }
  return Math.min(1, Math.max(0, litres / capacityL));
}
