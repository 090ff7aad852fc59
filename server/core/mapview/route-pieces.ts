import type { Gap, Report } from '../../contract/analysis.ts';
import type { Commodity, Span } from '../../contract/common.ts';
import type { RoutePiece } from '../../contract/map.ts';

/** Steps in which the drawn width follows what is left (ours): a twelfth is about a pixel of a 12 px line. */
const SHARE_STEPS = 12;

/**
 * The route in pieces of one state for one commodity, in route order: cut at the gaps' edges, where the level falls to
 * the reserve or to nothing, where cover begins or ends, and at each twelfth of the capacity. They tile the route.
 */
export function routePieces(report: Report, commodity: Commodity, lengthKm: number): RoutePiece[] {
  const pieces: RoutePiece[] = [];
  for (const [index, gap] of report.gaps.entries()) {
    const cuts = cutsOf(gap, report, lengthKm);
    for (let i = 0; i + 1 < cuts.length; i += 1) {
      const fromKm = cuts[i]!;
      const toKm = cuts[i + 1]!;
      const middleKm = (fromKm + toKm) / 2;
      const piece: RoutePiece = {
        commodity,
        gap: index,
        verdict: gap.verdict,
        state: stateAt(gap, middleKm),
        noCover: !report.cover.some((span) => span.fromKm <= middleKm && middleKm <= span.toKm),
        share: shareAt(gap.levels, middleKm, report.capacityL),
        fromKm,
        toKm,
      };
      pieces.push(piece);
    }
  }
  return pieces;
}

/** Route km at which a gap's drawing changes, its own edges first and last; a gap without length has none. */
function cutsOf(gap: Gap, report: Report, lengthKm: number): number[] {
  const fromKm = Math.max(0, gap.from.atKm);
  const toKm = Math.min(lengthKm, gap.to.atKm);
  if (!(toKm > fromKm)) return [];
  const inside = new Set<number>();
  const add = (km: number | null) => {
    if (km !== null && km > fromKm && km < toKm) inside.add(km);
  };
  add(gap.reserveFromKm);
  add(gap.runsDryKm);
  for (const span of report.cover as Span[]) {
    add(span.fromKm);
    add(span.toKm);
  }
  for (const km of shareSteps(gap, report.capacityL)) add(km);
  return [fromKm, ...[...inside].sort((a, b) => a - b), toKm];
}

/** Where the level passes a twelfth of the capacity, by straight lines between the gap's levels. */
function shareSteps(gap: Gap, capacityL: number): number[] {
  const steps: number[] = [];
  if (!(capacityL > 0)) return steps;
  for (let i = 0; i + 1 < gap.levels.length; i += 1) {
    const from = gap.levels[i]!;
    const to = gap.levels[i + 1]!;
    const fallL = from.litres - to.litres;
    if (!(fallL > 0)) continue;
    for (let step = 1; step < SHARE_STEPS; step += 1) {
      const litres = (capacityL * step) / SHARE_STEPS;
      if (litres >= from.litres || litres <= to.litres) continue;
      steps.push(from.atKm + ((from.litres - litres) / fallL) * (to.atKm - from.atKm));
    }
  }
  return steps;
}

function stateAt(gap: Gap, km: number): RoutePiece['state'] {
  if (gap.runsDryKm !== null && km > gap.runsDryKm) return 'dry';
  if (gap.reserveFromKm !== null && km > gap.reserveFromKm) return 'reserve';
  return 'left';
}

/** What is left at a place as a share of the capacity, 0 to 1. */
function shareAt(levels: Gap['levels'], km: number, capacityL: number): number {
  if (!(capacityL > 0)) return 0;
  let litres = levels[0]?.litres ?? 0;
  for (let i = 0; i + 1 < levels.length; i += 1) {
    const from = levels[i]!;
    const to = levels[i + 1]!;
    if (km < from.atKm) break;
    const step = to.atKm - from.atKm;
    const along = step > 0 ? Math.min(1, (km - from.atKm) / step) : 1;
    litres = from.litres + along * (to.litres - from.litres);
  }
  return Math.min(1, Math.max(0, litres / capacityL));
}
