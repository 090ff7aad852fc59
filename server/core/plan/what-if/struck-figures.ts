import { doubtOf } from '../../gaps/course/course.ts';
import { verdictOf } from '../../gaps/verdict.ts';
import { SLACK } from '../../quantity/slack.ts';
import type { Run, RunPoint } from '../drive/run.ts';
import { turnBackOf } from '../drive/turn-back/turn-back.ts';
import { lastHolding } from '../drive/way-points.ts';
import { planEdge } from '../side/plan-edge.ts';
import type { Mishap, Struck } from './mishap.ts';
import { shortOf, unfitL, verdictOnwards } from './stretch-row.ts';
import type { PlaceFigures, StretchFigures } from './what-if-row.ts';

type Way = Pick<StretchFigures, 'next' | 'verdict' | 'arriveL' | 'marginL' | 'endsAtM'>;

/** The figures of a mishap at a place, by the better way; `forced` back where the crew turns round in any case. */
export function struckFigures(
  struck: Struck,
  mishap: Mishap,
  forced?: 'back',
): StretchFigures & PlaceFigures {
  const { run, point, onL, backL } = struck;
  const { from, to } = run.stretch;
  const isBack = backL !== null && (forced === 'back' || backL > onL + SLACK);
  const way = isBack ? goingBack(struck, backL) : goingOn(struck, mishap);
  const lostL = mishap.lostL(point);
  return {
    atM: point.atM,
    lostL: lostL === 0 ? null : lostL,
    from: planEdge(from),
    to: planEdge(to),
    ...way,
    backMarginL: backL === null ? null : backMarginL(run, backL),
    ...shortOf(run, way),
    turnBackM: turnBackOf(run, mishap.lostBackL ?? mishap.lostL),
  };
}

function goingOn({ run, point, onL: arriveL }: Struck, mishap: Mishap): Way {
  const lostL = mishap.lostL(point);
  const marginL = run.marginL - lostL - (mishap.moreReserveL ?? 0);
  const goneL = lostL + unfitL(run);
  const endsAtM =
    arriveL >= -SLACK
      ? null
      : (lastHolding(pointsAhead(run, point), ({ litres }) => litres - goneL) ?? point.atM);
  const verdict = verdictOnwards(run, { arriveL, marginL, endsAtM });
  return { next: 'on', verdict, arriveL, marginL, endsAtM };
}

/** The points of a run from one of them, or from one between two of them, on. */
function pointsAhead({ points }: Run, point: RunPoint): RunPoint[] {
  const index = points.indexOf(point);
  return index >= 0 ? points.slice(index) : [point, ...points.filter(({ atM }) => atM > point.atM)];
}

/** The points of a run up to one of them, or to one between two of them. */
const pointsBehind = ({ points }: Run, point: RunPoint): RunPoint[] => [
  ...points.filter(({ atM }) => atM <= point.atM),
  ...(points.includes(point) ? [] : [point]),
];

function goingBack({ run, point }: Struck, arriveL: number): Way {
  const { course, from } = run.stretch;
  const marginL = backMarginL(run, arriveL);
  const behind = pointsBehind(run, point).filter(({ backL }) => backL !== null);
  // From where the way home is as long as what is missing.
  const endsAtM =
    arriveL >= -SLACK
      ? null
      : (lastHolding(behind, ({ backL }) => (backL === null ? null : -arriveL - backL)) ?? from.atM);
  const verdict = verdictOf({
    arriveL,
    marginL,
    runsDryM: endsAtM,
    firstUncoveredM: null,
    atBestUnknown: doubtOf(course, from, { kind: 'passing', atM: point.atM })?.leavesUnknown === true,
  });
  return { next: 'back', verdict, arriveL, marginL, endsAtM };
}

/** Litres above the reserve at the supply behind, of what is left there. */
const backMarginL = (run: Run, arriveL: number): number => arriveL + unfitL(run) - run.keepBackL;
