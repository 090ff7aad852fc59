import type { Passing } from '../../../server/contract/analysis.ts';
import type { Commodity, Span, Verdict } from '../../../server/contract/common.ts';
import { fitText, textWidthPx } from '../../kit/text-width.ts';
import { t } from '../../language/t.ts';
import { stretchesWithoutCover } from '../../levels/levels.ts';
import type { HalfPlan, StripGap, StripReport } from '../../levels/plan-report.ts';
import { formatBeforeKm, formatKm, type UnitSystem } from '../../units/units.ts';
import { severityOf, VERDICT_WORDS } from '../../words/words.ts';
import { type LabelWish, type PlacedLabel, placeLabels } from './place-labels.ts';
import { edgeWords, SHORT_VERDICT_WORDS, worstGapIndex } from './words.ts';
import { wrapText } from './wrap-text.ts';

const NAME_PX = 12.5;
export const DETAIL_PX = 11.5;
export const LINE_PX = 15;

/** What stands beside the bars, ready to draw; `topPx` is where its first line's box begins, `atPx` the place it speaks of. */
export type StripLabel = { topPx: number; atPx: number } & (
  | {
      kind: 'gap';
      gapIndex: number;
      /** The supply (or end) that the gap leads to, and how many more are drawn as one with it. */
      name: string;
      nameLines: string[];
      /** Length of the gap, with its verdict where that is not enough; null where only the name fits. */
      length: string | null;
    }
  | { kind: 'turn-back'; lines: string[]; first: boolean }
  | { kind: 'note'; text: string }
);

export interface HalfLabelsInput {
  report: StripReport;
  passings: readonly Passing[];
  commodity: Commodity;
  units: UnitSystem;
  selected: number | null;
  lengthKm: number;
  /** What of the route is on the strip. */
  shown: Span;
  /** Width of the column of labels. */
  labelPx: number;
  topPx: number;
  bottomPx: number;
  yOfKm(km: number): number;
}

const MAX_SHIFT_PX = 26;
/** Ends of gaps nearer to each other than this on the strip are named as one. */
const CLUSTER_PX = 11;
/** The longest gaps are named however many there are. */
const ALWAYS_NAMED = 4;
/** Names of gaps that hold take so much of the column at most: beyond that they come with zooming in. */
const CALM_SHARE = 0.9;
/** Names take so many lines at most: three where the column is narrow. */
const linesFor = (labelPx: number): number => (labelPx < 80 ? 3 : 2);

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

interface Draft {
  wish: LabelWish;
  finish(placed: PlacedLabel): StripLabel;
}

/** Every label of one half: placed in one column so that none covers another; what does not fit is left out. */
export function halfLabels(input: HalfLabelsInput): StripLabel[] {
  const drafts = new Map(
    [...turnBackDrafts(input), ...gapDrafts(input), ...noDataDrafts(input), ...passedDrafts(input)].map(
      (draft) => [draft.wish.key, draft],
    ),
  );
  const placed = placeLabels(
    [...drafts.values()].map((draft) => draft.wish),
    { topPx: input.topPx, bottomPx: input.bottomPx },
  );
  return placed.flatMap((label) => drafts.get(label.key)?.finish(label) ?? []);
}

const isOn = ({ fromKm, toKm }: Span, atKm: number): boolean => atKm >= fromKm && atKm <= toKm;

function turnBackDrafts({ report, selected, shown, units, labelPx, yOfKm }: HalfLabelsInput): Draft[] {
  return turnBacksOf(report, selected).flatMap(({ atKm, first }): Draft[] => {
    const lines = turnBackLines(atKm, units, labelPx);
    if (lines === null || !isOn(shown, atKm)) return [];
    const atPx = yOfKm(atKm);
    return [
      {
        wish: {
          key: `turn-back ${atKm}`,
          topPx: atPx - LINE_PX,
          heightPx: lines.length * LINE_PX,
          rank: first ? -1 : 2,
          maxShiftPx: MAX_SHIFT_PX,
        },
        finish: ({ topPx }) => ({ kind: 'turn-back', topPx, atPx, lines, first }),
      },
    ];
  });
}

/** Gaps whose ends stand so near to each other that they share a name. */
interface Cluster {
  gapIndex: number;
  gap: StripGap;
  count: number;
  rank: number;
}

function gapDrafts(input: HalfLabelsInput): Draft[] {
  const { report, shown, yOfKm } = input;
  const visible = [...report.gaps.entries()].filter(
    ([, { from, to }]) => to.atKm > shown.fromKm && from.atKm < shown.toKm,
  );
  const longest = new Set(
    visible
      .toSorted(([, a], [, b]) => b.lengthKm - a.lengthKm)
      .slice(0, ALWAYS_NAMED)
      .map(([gapIndex]) => gapIndex),
  );
  const rankOf = ranks(input);
  const clusters: Cluster[] = [];
  for (const [gapIndex, gap] of visible) {
    const rank = rankOf(gap, gapIndex);
    const last = clusters.at(-1);
    const isNear = last !== undefined && yOfKm(last.gap.to.atKm) - yOfKm(gap.to.atKm) < CLUSTER_PX;
    // What asks for attention keeps its own name.
    const isCalm = (one: number, index: number) => one > CALM_RANK && !longest.has(index);
    const joins = isNear && isCalm(rank, gapIndex) && isCalm(last.rank, last.gapIndex);
    if (joins) last.count += 1;
    else clusters.push({ gapIndex, gap, count: 1, rank });
  }
  const calm = clusters.filter(({ rank }) => rank > CALM_RANK);
  const room = CALM_SHARE * (input.bottomPx - input.topPx);
  const allFit = calm.length * 2 * LINE_PX <= room;
  return clusters
    .filter(({ rank, gapIndex }) => allFit || rank <= CALM_RANK || longest.has(gapIndex))
    .map((cluster) => gapDraft(cluster, input));
}

function gapDraft({ gapIndex, gap, count, rank }: Cluster, input: HalfLabelsInput): Draft {
  const { labelPx, units, passings, commodity } = input;
  const atPx = Math.max(input.topPx, input.yOfKm(gap.to.atKm));
  const first = edgeWords(gap.to, passings, commodity);
  const name = count > 1 ? t`${first} and ${count - 1} more` : first;
  const nameLines = wrapText(name, NAME_PX, { widthPx: labelPx, lines: linesFor(labelPx) });
  const namePx = nameLines.length * LINE_PX;
  const length = formatKm(gap.lengthKm, units);
  const detailPx = (gap.verdict === 'enough' ? 1 : 2) * LINE_PX;
  return {
    wish: {
      key: `gap ${gapIndex}`,
      topPx: atPx - LINE_PX / 2,
      heightPx: namePx + detailPx,
      shorterPx: namePx,
      rank,
      maxShiftPx: MAX_SHIFT_PX,
    },
    finish: ({ topPx, heightPx }) => ({
      kind: 'gap',
      gapIndex,
      topPx,
      atPx,
      name,
      nameLines,
      length: heightPx > namePx ? length : null,
    }),
  };
}

function noDataDrafts({
  report,
  lengthKm,
  labelPx,
  shown,
  topPx,
  bottomPx,
  yOfKm,
}: HalfLabelsInput): Draft[] {
  const text = textWidthPx(t('no map data'), DETAIL_PX) <= labelPx ? t('no map data') : t('no data');
  return stretchesWithoutCover(report, lengthKm).flatMap((span): Draft[] => {
    if (span.toKm <= shown.fromKm || span.fromKm >= shown.toKm) return [];
    const [high, low] = [Math.max(topPx, yOfKm(span.toKm)), Math.min(bottomPx, yOfKm(span.fromKm))];
    if (low - high < LINE_PX) return [];
    const atPx = (high + low) / 2;
    return [
      {
        wish: {
          key: `no-data ${span.fromKm}`,
          topPx: atPx - LINE_PX / 2,
          heightPx: LINE_PX,
          rank: 8,
          maxShiftPx: (low - high) / 2,
        },
        finish: ({ topPx: top }) => ({ kind: 'note', topPx: top, atPx, text }),
      },
    ];
  });
}

/** Supplies that the plan passes by are named where they are few. */
const FEW_PASSED = 8;

function passedDrafts({ report, shown, labelPx, yOfKm }: HalfLabelsInput): Draft[] {
  const passed = (report.plan?.stops ?? []).filter(({ used, atKm }) => !used && isOn(shown, atKm));
  if (passed.length > FEW_PASSED) return [];
  return passed.map(({ atKm, name }) => {
    const text = fitText(t`past ${name}`, DETAIL_PX, labelPx);
    const atPx = yOfKm(atKm);
    return {
      wish: {
        key: `past ${name} ${atKm}`,
        topPx: atPx - LINE_PX / 2,
        heightPx: LINE_PX,
        rank: 9,
        maxShiftPx: LINE_PX,
      },
      finish: ({ topPx }) => ({ kind: 'note', topPx, atPx, text }),
    };
  });
}

/** The words for a turn-back point; null where the column is too narrow for them (the tables have them too). */
function turnBackLines(turnBackKm: number, units: UnitSystem, labelPx: number): string[] | null {
  const place = formatBeforeKm(turnBackKm, units);
  const lines = [t('turn back'), ...wrapText(t`before ${place}`, DETAIL_PX, { widthPx: labelPx, lines: 2 })];
  return lines.every((line) => textWidthPx(line, DETAIL_PX) <= labelPx) && lines.at(-1)?.endsWith(place)
    ? lines
    : null;
}

/** Beyond this rank a gap is one that holds and that nobody asked for. */
const CALM_RANK = 5;

/** The chosen gap and the supply it starts from first, then the worst, then by verdict and length; legs of a plan all tell. */
function ranks({ report, selected }: HalfLabelsInput): (gap: StripGap, index: number) => number {
  const worst = worstGapIndex(report);
  const longestKm = report.gaps.reduce((most, gap) => Math.max(most, gap.lengthKm), 1);
  const isPlanned = report.plan !== undefined;
  return (gap, index) => {
    if (index === selected) return 0;
    if (selected !== null && index === selected - 1) return 0.5;
    if (index === worst && gap.verdict !== 'enough') return 1;
    if (index === worst - 1) return 1.5;
    const share = (1 - gap.lengthKm / longestKm) / 2;
    const severity = severityOf(gap.verdict);
    return isPlanned || severity > 0 ? CALM_RANK - 1 - severity / 2 + share : CALM_RANK + 1 + share;
  };
}

/** The verdict's word, or its short one where the column is too narrow for it. */
export function verdictWords(verdict: Verdict, labelPx: number): string {
  const words = VERDICT_WORDS[verdict];
  return verdictWidthPx(words) <= labelPx ? words : SHORT_VERDICT_WORDS[verdict];
}

/** About how wide a verdict's word stands with its frame's padding. */
export const verdictWidthPx = (words: string): number => textWidthPx(words, DETAIL_PX) + 8;
