import type { Evidence } from '../../contract/common.ts';
import { at } from '../lists/at.ts';
import { pairsOf } from '../lists/pairs.ts';
import { SLACK } from '../quantity/slack.ts';
import type { Course, Edge } from './course/course.ts';
import type { Gap, GapEdge } from './gap.ts';
import { usableL } from './gap-grades.ts';
import { returnNeedL } from './need.ts';
import { type Reckoning, reckon } from './reckon.ts';
import { canBeDrivenBack, turnBackM } from './turn-back.ts';
import { VERDICT_RANK } from './verdict.ts';

/** Weakest last. */
const EVIDENCE_RANK: Record<Evidence, number> = { confirmed: 3, stated: 2, implied: 1, doubtful: 0 };

/**
 * The gaps of one commodity, tiling the route from `edges[0]` (the start) over every passing that counts to the
 * end. `startL` is what is aboard at the start; at every passing all fixed tanks are filled, as far as it gives so much. At
 * least two edges.
 */
export function gapsOf(course: Course, edges: readonly Edge[], startL: number): Gap[] {
  const fullL = course.rig[course.commodity].drawableL;
  const edge = (index: number): Edge => at(edges, index);

  const figures: Reckoning[] = [];
  for (const [from, to] of pairsOf(edges)) {
    const departL = departureL(from, figures.at(-1), { startL, fullL });
    figures.push(reckon(course, from, to, { departL }));
  }
  const departAt = (index: number) => at(figures, index).departL;
  const skipped = skipHelps(course, edges, figures, departAt);

  return figures.map((figure, index): Gap => {
    const from = edge(index);
    const to = edge(index + 1);
    const next = edges[index + 2];
    return {
      from: gapEdge(from),
      to: gapEdge(to),
      lengthM: to.atM - from.atM,
      wayM: figure.way.wayM,
      days: figure.way.days,
      departL: figure.departL,
      needL: figure.needL,
      reserveL: figure.reserveL,
      arriveL: figure.arriveL,
      marginL: figure.marginL,
      verdict: figure.verdict,
      acrossNoData: figure.acrossNoData,
      doubt: figure.doubt,
      weakest: weakestOf(from, to),
      ...extraOf(course, figure),
      turnBackM: turnBackM(course, from, to, budgetL(course, figure.departL, figure.backReserveL)),
      skipHelps: skipped.has(index),
      ifToFails: next === undefined ? null : ifToFails(course, from, to, next, figure.departL),
      reserveFromM: figure.reserveFromM,
      runsDryM: figure.runsDryM,
      levels: figure.levels,
      rescue: [],
      ...(course.commodity === 'water' ? { grades: figure.grades } : {}),
      working: { wayM: figure.way.terms, needL: figure.needTerms, reserveL: figure.reserveTerms },
    };
  });
}

/** Aboard on leaving: at the start what was there, at a supply full, or what came and all that it gives. */
function departureL(
  from: Edge,
  arriving: Reckoning | undefined,
  { startL, fullL }: { readonly startL: number; readonly fullL: number },
): number {
  if (arriving === undefined) return startL;
  const givesL = from.mostL ?? Number.POSITIVE_INFINITY;
  return Math.min(fullL, Math.max(0, arriving.arriveL) + givesL);
}

/** What is missing to bring the margin to nothing, and the cans that hold it. */
function extraOf(course: Course, figure: Reckoning): Pick<Gap, 'extraL' | 'extraCans'> {
  const marginL = tightestMarginL(figure);
  const extraL = marginL < -SLACK ? -marginL : 0;
  return { extraL, extraCans: extraL === 0 ? 0 : cansFor(course, extraL) };
}

/** Cans that hold so much; none for what goes in no can. */
function cansFor({ rig, commodity }: Course, litres: number): number {
  const { takesCans, canL } = rig[commodity];
  return takesCans ? Math.ceil(litres / canL - SLACK) : 0;
}

/** Of all water and of drinking grade, where grades are known, the one that is nearer to running out. */
const tightestMarginL = ({ marginL, grades }: Reckoning): number =>
  grades === null ? marginL : Math.min(marginL, grades.drinking.marginL);

/** Litres that may be used up before the reserve is touched, of drinking grade neither. */
const budgetL = (course: Course, departL: number, reserveL: number): number =>
  course.commodity === 'water' ? usableL(course.rig, departL, reserveL) : departL - reserveL;

/** Gone to `to` in vain: the verdict to the passing after it, and whether `from` can be reached again at all. */
function ifToFails(
  course: Course,
  from: Edge,
  to: Edge,
  next: Edge,
  departL: number,
): NonNullable<Gap['ifToFails']> {
  const onward = reckon(course, from, next, { departL, viaM: 2 * to.detourM });
  return {
    verdict: onward.verdict,
    canReturn:
      canBeDrivenBack(course, from, to) &&
      budgetL(course, departL, 0) - returnNeedL(course, from, to) >= -SLACK,
    marginL: tightestMarginL(onward),
  };
}

/**
 * Indexes of the gaps whose verdict would be better if the passing between two gaps were left out: going there costs
 * more than it brings.
 */
function skipHelps(
  course: Course,
  edges: readonly Edge[],
  figures: readonly Reckoning[],
  departAt: (index: number) => number,
): Set<number> {
  const helped = new Set<number>();
  figures.slice(1).forEach((after, index) => {
    const before = at(figures, index);
    const worse = Math.min(VERDICT_RANK[before.verdict], VERDICT_RANK[after.verdict]);
    if (worse === VERDICT_RANK.enough) return;
    const without = reckon(course, at(edges, index), at(edges, index + 2), { departL: departAt(index) });
    const rank = VERDICT_RANK[without.verdict];
    if (rank <= worse) return;
    if (VERDICT_RANK[before.verdict] < rank) helped.add(index);
    if (VERDICT_RANK[after.verdict] < rank) helped.add(index + 1);
  });
  return helped;
}

function weakestOf(from: Edge, to: Edge): Evidence | null {
  const known = [from.evidence, to.evidence].filter((evidence) => evidence !== null);
  return known.sort((a, b) => EVIDENCE_RANK[a] - EVIDENCE_RANK[b])[0] ?? null;
}

const gapEdge = ({ kind, id, name, atM, detourM, mostL }: Edge): GapEdge => ({
  kind,
  id,
  name,
  atM,
  detourM,
  ...(mostL === undefined ? {} : { mostL }),
});
