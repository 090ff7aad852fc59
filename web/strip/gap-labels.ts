import type { Passing } from '../../server/contract/analysis.ts';
import type { Commodity, Verdict } from '../../server/contract/common.ts';
import { fitText, textWidthPx } from '../kit/text-width.ts';
import { stretchesWithoutCover } from '../levels/levels.ts';
import type { HalfPlan, StripGap, StripReport } from '../levels/plan-report.ts';
import { formatAtKm, formatKm, type UnitSystem } from '../units/units.ts';
import { severityOf, VERDICT_WORDS } from '../words/words.ts';
import { type LabelWish, type PlacedLabel, placeLabels } from './place-labels.ts';
import { edgeWords, SHORT_VERDICT_WORDS, worstGapIndex } from './words.ts';

const NAME_PX = 12.5;
export const DETAIL_PX = 11.5;
export const LINE_PX = 15;
/** From the road's edge to the words beside a turn-back arrow. */
export const TURN_BACK_INSET_PX = 14;

/** What stands beside the strip, ready to draw; `topPx` is where its first line's box begins. */
export type StripLabel =
  | {
      kind: 'gap';
      gapIndex: number;
      topPx: number;
      /** The supply (or end) that the gap leads to. */
      name: string;
      fullName: string;
      /** Length and verdict; null where only the name fits. */
      length: string | null;
      /** Where the line lies that this label belongs to, when it was moved away from it. */
      leaderFromPx: number | null;
    }
  | { kind: 'turn-back'; topPx: number; lines: [string, string]; first: boolean }
  | { kind: 'note'; topPx: number; text: string };

export interface HalfLabelsInput {
  report: StripReport;
  passings: readonly Passing[];
  commodity: Commodity;
  units: UnitSystem;
  selected: number | null;
  lengthKm: number;
  halfWidthPx: number;
  topPx: number;
  bottomPx: number;
  yOfKm(km: number): number;
}

/** Below this a moved label still plainly belongs to its line. */
const LEADER_FROM_PX = 4;
const MAX_SHIFT_PX = 16;
/** A gap drawn shorter than this is named only for a reason. */
const NAMED_FROM_PX = 9;
/** The longest gaps are named however short they are drawn. */
const ALWAYS_NAMED = 6;
/** Among so many gaps the longest show their length even where it stands over the next one. */
const CROWD = 40;
/** A name with length and verdict beneath it. */
const BOTH_LINES_PX = 2 * LINE_PX + 2;

/** Where to turn back, as far as it is written out: the plan's points, or that of one gap. */
function turnBacksOf(report: StripReport, selected: number | null): HalfPlan['turnBacks'] {
  if (report.plan !== undefined) return report.plan.turnBacks;
  const index = turnBackGap(report, selected);
  const atKm = index === null ? null : (report.gaps[index]?.turnBackKm ?? null);
  return atKm === null ? [] : [{ atKm, first: true }];
}

/** The gap whose turn-back point is written out: the chosen one, else the one that asks for most attention. */
export function turnBackGap(report: StripReport, selected: number | null): number | null {
  const index = selected ?? worstGapIndex(report);
  const gap = report.gaps[index];
  if (gap === undefined || gap.turnBackKm === null) return null;
  if (selected === null && gap.verdict === 'enough') return null;
  // A turn-back point at the gap's far end is never a choice to make.
  return gap.turnBackKm < gap.to.atKm ? index : null;
}

/** Every label of one half: placed in one column so that none covers another; what does not fit is left out. */
export function halfLabels(input: HalfLabelsInput): StripLabel[] {
  const { report, units, yOfKm } = input;
  const drafts = new Map<string, { wish: LabelWish; make(placed: PlacedLabel): StripLabel }>();
  const add = (wish: LabelWish, make: (placed: PlacedLabel) => StripLabel): void => {
    drafts.set(wish.key, { wish, make });
  };

  for (const { atKm, first } of turnBacksOf(report, input.selected)) {
    const lines = turnBackLines(atKm, units, input.halfWidthPx);
    if (lines === null) continue;
    const wish = {
      key: `turn-back ${atKm}`,
      topPx: yOfKm(atKm) - LINE_PX,
      heightPx: 2 * LINE_PX,
      rank: first ? -1 : 2,
      maxShiftPx: LINE_PX,
    };
    add(wish, ({ topPx }) => ({ kind: 'turn-back', topPx, lines, first }));
  }

  const worst = worstGapIndex(report);
  const longestKm = Math.max(...report.gaps.map((gap) => gap.lengthKm), 1);
  const longest = [...report.gaps.entries()]
    .sort(([, a], [, b]) => b.lengthKm - a.lengthKm)
    .slice(0, ALWAYS_NAMED)
    .map(([gapIndex]) => gapIndex);
  report.gaps.forEach((gap, gapIndex) => {
    const topPx = yOfKm(gap.to.atKm) + 2;
    const roomPx = yOfKm(gap.from.atKm) - yOfKm(gap.to.atKm);
    const fullName = edgeWords(gap.to, input.passings, input.commodity);
    const name = fitText(fullName, NAME_PX, input.halfWidthPx - 4);
    const length = formatKm(gap.lengthKm, units);
    const rank = rankOf(gap, gapIndex, input.selected, worst, longestKm);
    // Names of a town's twenty pumps tell nothing: only what stands apart, is among the longest or asks for attention.
    const calm = gap.verdict === 'enough' && rank > 2;
    if (calm && roomPx < NAMED_FROM_PX && !longest.includes(gapIndex)) return;
    const two =
      roomPx >= BOTH_LINES_PX || rank <= 1 || (report.gaps.length > CROWD && longest.includes(gapIndex));
    const wish: LabelWish = {
      key: `gap ${gapIndex}`,
      topPx,
      heightPx: LINE_PX,
      rank,
      maxShiftPx: MAX_SHIFT_PX,
    };
    add(two ? { ...wish, heightPx: BOTH_LINES_PX, shorterPx: LINE_PX } : wish, (placed) => ({
      kind: 'gap',
      gapIndex,
      topPx: placed.topPx,
      name,
      fullName,
      length: placed.heightPx > LINE_PX ? length : null,
      leaderFromPx: Math.abs(placed.shiftPx) > LEADER_FROM_PX ? topPx - 2 : null,
    }));
  });

  const noData = textWidthPx('no map data', DETAIL_PX) <= input.halfWidthPx ? 'no map data' : 'no data';
  stretchesWithoutCover(report, input.lengthKm).forEach((span, i) => {
    const roomPx = yOfKm(span.fromKm) - yOfKm(span.toKm);
    if (roomPx < LINE_PX) return;
    const middlePx = (yOfKm(span.fromKm) + yOfKm(span.toKm)) / 2;
    const wish = {
      key: `no-data ${i}`,
      topPx: middlePx - LINE_PX / 2,
      heightPx: LINE_PX,
      rank: 8,
      maxShiftPx: roomPx / 2,
    };
    add(wish, ({ topPx }) => ({ kind: 'note', topPx, text: noData }));
  });

  for (const { atKm, name, used } of report.plan?.stops ?? []) {
    if (used) continue;
    const text = fitText(`past ${name}`, DETAIL_PX, input.halfWidthPx - 4);
    const wish = {
      key: `past ${name} ${atKm}`,
      topPx: yOfKm(atKm) - LINE_PX / 2,
      heightPx: LINE_PX,
      rank: 9,
      maxShiftPx: LINE_PX / 3,
    };
    add(wish, ({ topPx }) => ({ kind: 'note', topPx, text }));
  }

  const placed = placeLabels(
    [...drafts.values()].map((draft) => draft.wish),
    { topPx: input.topPx, bottomPx: input.bottomPx },
  );
  return placed.flatMap((label) => drafts.get(label.key)?.make(label) ?? []);
}

/** The words beside a turn-back arrow; null where the strip is too narrow for them (the tables have them too). */
function turnBackLines(turnBackKm: number, units: UnitSystem, halfWidthPx: number): [string, string] | null {
  const place = formatAtKm(turnBackKm, units);
  const fits = (text: string): boolean => textWidthPx(text, DETAIL_PX) + TURN_BACK_INSET_PX <= halfWidthPx;
  if (!fits('turn back')) return null;
  if (fits(`before ${place}`)) return ['turn back', `before ${place}`];
  return fits(place) ? ['turn back', place] : null;
}

/** The chosen gap and the supply it starts from first, then the worst, then by verdict and length. */
function rankOf(
  gap: StripGap,
  index: number,
  selected: number | null,
  worst: number,
  longestKm: number,
): number {
  if (index === selected) return 0;
  if (selected !== null && index === selected - 1) return 0.5;
  if (index === worst && gap.verdict !== 'enough') return 1;
  if (index === worst - 1) return 1.5;
  return 6 - severityOf(gap.verdict) + (1 - gap.lengthKm / longestKm) / 2;
}

/** About how wide a verdict's word stands with its frame's padding. */
export const verdictWidthPx = (words: string): number => textWidthPx(words, DETAIL_PX) + 8;

/** What of verdict and length fits into a half: both, the verdict alone, or its short word. */
export function detailWords(
  verdict: Verdict,
  length: string,
  halfWidthPx: number,
): { verdict: string; length: string | null } {
  const words = VERDICT_WORDS[verdict];
  const besidePx = textWidthPx(length, DETAIL_PX) + 4;
  if (verdictWidthPx(words) + besidePx <= halfWidthPx) return { verdict: words, length };
  if (verdict === 'enough') return { verdict: '', length };
  return {
    verdict: verdictWidthPx(words) <= halfWidthPx ? words : SHORT_VERDICT_WORDS[verdict],
    length: null,
  };
}
