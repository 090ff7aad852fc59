import type { Verdict } from '../../../contract/common.ts';
import { doubtOf } from '../../gaps/course/course.ts';
import { VERDICT_RANK, verdictOf } from '../../gaps/verdict.ts';
import { SLACK } from '../../quantity/slack.ts';
import type { Run } from '../drive/run.ts';
import { turnBackOf } from '../drive/turn-back/turn-back.ts';
import { lastHolding } from '../drive/way-points.ts';
import { planEdge } from '../side/plan-edge.ts';
import type { StretchFigures } from './what-if-row.ts';

/** The least of all margins; among alike the worse verdict, then the first. Null without runs. */
export function tightestOf([first, ...others]: readonly Run[]): Run | null {
  return first === undefined ? null : others.reduce((a, b) => (isTighter(b, a) ? b : a), first);
}

const isTighter = (run: Run, than: Run): boolean =>
  run.marginL < than.marginL - SLACK ||
  (run.marginL <= than.marginL + SLACK &&
    VERDICT_RANK[run.figures.verdict] < VERDICT_RANK[than.figures.verdict]);

/** What is left of a run that something befell, on arrival and above the reserve. */
interface Arrival {
  readonly arriveL: number;
  readonly marginL: number;
  /** Where nothing is left, metres along; null where something is. */
  readonly endsAtM: number | null;
}

/** The verdict on going on to the next supply. */
export function verdictOnwards({ stretch }: Run, { arriveL, marginL, endsAtM }: Arrival): Verdict {
  const { course, from, to } = stretch;
  const firstUncovered = course.uncovered.find((span) => span.toM > from.atM && span.fromM < to.atM);
  return verdictOf({
    arriveL,
    marginL,
    runsDryM: endsAtM,
    firstUncoveredM: firstUncovered === undefined ? null : Math.max(firstUncovered.fromM, from.atM),
    atBestUnknown: doubtOf(course, from, to)?.leavesUnknown === true,
  });
}

/** What would have brought a run there with nothing left, and with the reserve. */
export function shortOf(
  { stretch }: Run,
  { arriveL, marginL }: Pick<Arrival, 'arriveL' | 'marginL'>,
): Pick<StretchFigures, 'missingL' | 'coverL' | 'coverCans'> {
  const coverL = marginL < -SLACK ? -marginL : 0;
  return {
    missingL: arriveL < -SLACK ? -arriveL : 0,
    coverL,
    coverCans: coverL === 0 ? 0 : Math.ceil(coverL / stretch.canL - SLACK),
  };
}

/** Of what is aboard at the end, litres that cannot serve: kept for washing, where drinking grade is what runs out. */
export const unfitL = ({ figures, arriveL }: Run): number => figures.arriveL - arriveL;

/** The figures of a row that holds all along a stretch. */
export function stretchFigures(run: Run): StretchFigures {
  const { arriveL, marginL, stretch, points } = run;
  const endsAtM =
    arriveL < -SLACK ? (lastHolding(points, ({ litres }) => litres - unfitL(run)) ?? stretch.from.atM) : null;
  return {
    from: planEdge(stretch.from),
    to: planEdge(stretch.to),
    next: 'on',
    verdict: verdictOnwards(run, { arriveL, marginL, endsAtM }),
    arriveL,
    marginL,
    endsAtM,
    ...shortOf(run, { arriveL, marginL }),
    turnBackM: turnBackOf(run),
  };
}
