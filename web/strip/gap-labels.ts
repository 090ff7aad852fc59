import type { Gap, Passing, Report } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import { formatAtKm, formatKm, type UnitSystem } from '../units.ts';
import { stretchesWithoutCover } from './levels.ts';
import { type LabelWish, placeLabels } from './place-labels.ts';
import { fitText, textWidthPx } from './text-width.ts';
import { edgeWords, VERDICT_CONCERN, worstGapIndex } from './words.ts';

export const NAME_PX = 12.5;
export const DETAIL_PX = 11.5;
export const LINE_PX = 15;

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
  | { kind: 'turn-back'; gapIndex: number; topPx: number; atPx: number; lines: [string, string] }
  | { kind: 'no-data'; topPx: number; text: string };

export interface HalfLabelsInput {
  report: Report;
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

/** The gap whose turn-back point is written out: the chosen one, else the one that asks for most attention. */
export function turnBackGap(report: Report, selected: number | null): number | null {
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
  const drafts = new Map<string, { wish: LabelWish; make(topPx: number, shiftPx: number): StripLabel }>();
  const add = (wish: LabelWish, make: (topPx: number, shiftPx: number) => StripLabel): void => {
    drafts.set(wish.key, { wish, make });
  };

  const turnBack = turnBackGap(report, input.selected);
  if (turnBack !== null) {
    const turnBackKm = report.gaps[turnBack]!.turnBackKm!;
    const atPx = yOfKm(turnBackKm);
    const lines: [string, string] = ['turn back', `before ${formatAtKm(turnBackKm, units)}`];
    const heightPx = 2 * LINE_PX;
    add({ key: 'turn-back', topPx: atPx - LINE_PX, heightPx, rank: -1, maxShiftPx: LINE_PX }, (topPx) => ({
      kind: 'turn-back',
      gapIndex: turnBack,
      topPx,
      atPx,
      lines,
    }));
  }

  const worst = worstGapIndex(report);
  const longestKm = Math.max(...report.gaps.map((gap) => gap.lengthKm), 1);
  report.gaps.forEach((gap, gapIndex) => {
    const topPx = yOfKm(gap.to.atKm) + 2;
    const roomPx = yOfKm(gap.from.atKm) - yOfKm(gap.to.atKm);
    const fullName = edgeWords(gap.to, input.passings, input.commodity);
    const name = fitText(fullName, NAME_PX, input.halfWidthPx - 4);
    const length = formatKm(gap.lengthKm, units);
    const rank = rankOf(gap, gapIndex, input.selected, worst, longestKm);
    const make =
      (withLength: boolean) =>
      (at: number, shiftPx: number): StripLabel => ({
        kind: 'gap',
        gapIndex,
        topPx: at,
        name,
        fullName,
        length: withLength ? length : null,
        leaderFromPx: Math.abs(shiftPx) > LEADER_FROM_PX ? topPx - 2 : null,
      });
    const two = roomPx >= 2 * LINE_PX + 4 || rank < 2;
    const heightPx = two ? 2 * LINE_PX + 2 : LINE_PX;
    add({ key: `gap ${gapIndex}`, topPx, heightPx, rank, maxShiftPx: MAX_SHIFT_PX }, make(two));
  });

  stretchesWithoutCover(report, input.lengthKm).forEach((span, i) => {
    const roomPx = yOfKm(span.fromKm) - yOfKm(span.toKm);
    if (roomPx < LINE_PX) return;
    const middlePx = (yOfKm(span.fromKm) + yOfKm(span.toKm)) / 2;
    const wish = {
      key: `no-data ${i}`,
      topPx: middlePx - LINE_PX / 2,
      heightPx: LINE_PX,
      rank: 2.5,
      maxShiftPx: roomPx / 2,
    };
    add(wish, (topPx) => ({ kind: 'no-data', topPx, text: 'no map data' }));
  });

  const placed = placeLabels(
    [...drafts.values()].map((draft) => draft.wish),
    { topPx: input.topPx, bottomPx: input.bottomPx },
  );
  return placed.map(({ key, topPx, shiftPx }) => drafts.get(key)!.make(topPx, shiftPx));
}

/** The chosen gap and the supply it starts from first, then the worst, then by verdict and length. */
function rankOf(gap: Gap, index: number, selected: number | null, worst: number, longestKm: number): number {
  if (index === selected) return 0;
  if (selected !== null && index === selected - 1) return 0.5;
  if (index === worst && gap.verdict !== 'enough') return 1;
  if (index === worst - 1) return 1.5;
  return 3 + VERDICT_CONCERN[gap.verdict] + (1 - gap.lengthKm / longestKm) / 2;
}

/** About how wide a verdict's word stands with its frame's padding. */
export const verdictWidthPx = (words: string): number => textWidthPx(words, DETAIL_PX) + 8;
