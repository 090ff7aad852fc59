import type { Verdict } from '../../../contract/common.ts';
import { sketchyM } from '../../gaps/course.ts';
import { VERDICT_RANK, verdictOf } from '../../gaps/verdict.ts';
import { SLACK } from '../../quantity/slack.ts';
import { lastHolding, type Run, turnBackOf } from '../drive/run.ts';
import { planEdge } from '../question/plan-edge.ts';
import type { StretchFigures } from './what-if-row.ts';

/** The least of all margins; among alike the worse verdict, then the first. Null without runs. */
export function tightestOf(runs: readonly Run[]): Run | null {
  let tightest: Run | null = null;
  for (const run of runs) {
    if (tightest === null) tightest = run;
    const [a, b] = [VERDICT_RANK[run.figures.verdict], VERDICT_RANK[tightest.figures.verdict]];
    if (run.marginL < tightest.marginL - SLACK || (run.marginL <= tightest.marginL + SLACK && a < b))
      tightest = run;
  }
  return tightest;
}

/** The verdict on going on to the next supply; `endsM`: where nothing is left, metres along, null where something is. */
export function verdictOnwards(
  { stretch }: Run,
  { arriveL, marginL, endsM }: { arriveL: number; marginL: number; endsM: number | null },
): Verdict {
  const { course, from, to } = stretch;
  const firstUncovered = course.uncovered.find((span) => span.toM > from.atM && span.fromM < to.atM);
  return verdictOf({
    arriveL,
    marginL,
    runsDryM: endsM,
    firstUncoveredM: firstUncovered === undefined ? null : Math.max(firstUncovered.fromM, from.atM),
    atBestUnknown: sketchyM(course, from.atM, to.atM) > 0 || (to.kind === 'end' && course.onward === null),
  });
}

/** The figures of a row that holds all along a stretch. */
export function stretchFigures(run: Run): StretchFigures {
  const { arriveL, marginL, figures, stretch, points } = run;
  const unfitL = figures.arriveL - arriveL;
  const missing = arriveL < -SLACK;
  const endsM = missing ? (lastHolding(points, ({ litres }) => litres - unfitL) ?? stretch.from.atM) : null;
  const coverL = marginL < -SLACK ? -marginL : 0;
  return {
    from: planEdge(stretch.from),
    to: planEdge(stretch.to),
    next: 'on',
    verdict: verdictOnwards(run, { arriveL, marginL, endsM }),
    arriveL,
    marginL,
    endsAtM: endsM,
    missingL: missing ? -arriveL : 0,
    coverL,
    coverCans: coverL === 0 ? 0 : Math.ceil(coverL / stretch.canL - SLACK),
    turnBackM: turnBackOf(run),
  };
}
