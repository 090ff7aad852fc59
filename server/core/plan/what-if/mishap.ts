import { sketchyM } from '../../gaps/course.ts';
import { verdictOf } from '../../gaps/verdict.ts';
import { SLACK } from '../../quantity/slack.ts';
import { lastHolding, pointBetween, type Run, type RunPoint } from '../drive/run.ts';
import { planEdge } from '../question/plan-edge.ts';
import { verdictOnwards } from './stretch-row.ts';
import type { PlaceFigures, StretchFigures } from './what-if-row.ts';

/** Something that takes litres at one place; both sums may depend on what is aboard there. */
export interface Mishap {
  /** Lost for going on, litres. */
  lostL: (point: RunPoint) => number;
  /** Lost for going back; as for going on when left out. */
  lostBackL?: (point: RunPoint) => number;
  /** By how much the reserve on going on is larger afterwards. */
  moreReserveL?: number;
}

/** A mishap at one place. */
export interface Struck {
  run: Run;
  point: RunPoint;
  /** On arrival at the next supply, and at the supply behind. */
  onL: number;
  backL: number | null;
}

/** What is left by the better of going on and going back. */
export const bestL = ({ onL, backL }: Struck): number => Math.max(onL, backL ?? Number.NEGATIVE_INFINITY);

function strike(run: Run, mishap: Mishap, point: RunPoint): Struck {
  const lostBackL = (mishap.lostBackL ?? mishap.lostL)(point);
  return {
    run,
    point,
    onL: run.arriveL - mishap.lostL(point),
    backL: point.backL === null ? null : point.litres - unfitL(run) - lostBackL - point.backL,
  };
}

/** What is aboard at the end and cannot serve: kept for washing, where drinking grade is what runs out. */
const unfitL = ({ figures, arriveL }: Run): number => figures.arriveL - arriveL;

/**
 * Where a mishap does most harm: of all places of all runs the one where the better of going on and going back leaves
 * least, the first of ties. Exact: between two points both change along straight lines, which may cross once.
 */
export function worstPlace(runs: readonly Run[], mishap: Mishap): Struck | null {
  let worst: Struck | null = null;
  const consider = (struck: Struck) => {
    if (worst === null || bestL(struck) < bestL(worst) - SLACK) worst = struck;
  };
  for (const run of runs) {
    run.points.forEach((point, index) => {
      const before = run.points[index - 1];
      const struck = strike(run, mishap, point);
      if (before !== undefined && before.atM < point.atM) {
        const earlier = strike(run, mishap, before);
        for (const atM of bends(run, mishap, before, point, earlier, struck)) {
          consider(strike(run, mishap, pointBetween(before, point, atM)));
        }
      }
      consider(struck);
    });
  }
  return worst;
}

/** Places between two points where going on and going back come out alike, or what is lost bends. */
function bends(
  run: Run,
  mishap: Mishap,
  before: RunPoint,
  after: RunPoint,
  earlier: Struck,
  later: Struck,
): number[] {
  const lengthM = after.atM - before.atM;
  const places: number[] = [];
  // A tank that is lost whole until it is all that there is: what is lost bends where the tanks are down to it.
  const [lostBefore, lostAfter] = [mishap.lostL(before), mishap.lostL(after)];
  const middle = pointBetween(before, after, before.atM + lengthM / 2);
  if (Math.abs(mishap.lostL(middle) - (lostBefore + lostAfter) / 2) > SLACK) {
    const share = (before.tankL - lostBefore) / (before.tankL - after.tankL);
    places.push(before.atM + Math.min(1, Math.max(0, share)) * lengthM);
  }
  for (const [a, b] of cutsOf(
    run,
    mishap,
    [before, ...places.map((atM) => pointBetween(before, after, atM)), after],
    earlier,
    later,
  )) {
    const [apart, apartLater] = [a.onL - (a.backL ?? 0), b.onL - (b.backL ?? 0)];
    if (a.backL === null || b.backL === null || apart * apartLater >= 0) continue;
    places.push(a.point.atM + (apart / (apart - apartLater)) * (b.point.atM - a.point.atM));
  }
  return places;
}

function cutsOf(
  run: Run,
  mishap: Mishap,
  points: readonly RunPoint[],
  earlier: Struck,
  later: Struck,
): [Struck, Struck][] {
  const struck = points.map((point, index) =>
    index === 0 ? earlier : index === points.length - 1 ? later : strike(run, mishap, point),
  );
  return struck.slice(1).map((one, index) => [struck[index]!, one]);
}

/** What of a row follows from where a mishap struck. */
export type StruckFigures = StretchFigures & PlaceFigures;

/** The figures of a mishap at a place; `forced` back where the crew turns round in any case. */
export function struckFigures(struck: Struck, mishap: Mishap, forced?: 'back'): StruckFigures {
  const { run, point, onL, backL } = struck;
  const { stretch, keepL } = run;
  const { course, from, to, canL } = stretch;
  const back = backL !== null && (forced === 'back' || backL > onL + SLACK);
  const arriveL = back ? backL : onL;
  const backMarginL = backL === null ? null : backL + unfitL(run) - keepL;
  const marginL = back ? backMarginL! : run.marginL - mishap.lostL(point) - (mishap.moreReserveL ?? 0);
  const endsM =
    arriveL >= -SLACK ? null : back ? endsGoingBack(struck, arriveL) : endsGoingOn(struck, mishap);
  const verdict = back
    ? verdictOf({
        arriveL,
        marginL,
        runsDryM: endsM,
        firstUncoveredM: null,
        atBestUnknown: sketchyM(course, from.atM, point.atM) > 0,
      })
    : verdictOnwards(run, { arriveL, marginL, endsM });
  const lostBackL = mishap.lostBackL ?? mishap.lostL;
  const turnBackM = lastHolding(run.points, (each) =>
    each.backL === null ? null : each.litres - lostBackL(each) - each.backL - keepL,
  );
  const coverL = marginL < -SLACK ? -marginL : 0;
  const lostL = mishap.lostL(point);
  return {
    atM: point.atM,
    lostL: lostL === 0 ? null : lostL,
    from: planEdge(from),
    to: planEdge(to),
    next: back ? 'back' : 'on',
    verdict,
    arriveL,
    marginL,
    backMarginL,
    endsAtM: endsM,
    missingL: arriveL < -SLACK ? -arriveL : 0,
    coverL,
    coverCans: coverL === 0 ? 0 : Math.ceil(coverL / canL - SLACK),
    turnBackM,
  };

  function endsGoingOn({ run: driven }: Struck, { lostL: lost }: Mishap): number {
    const least = lost(point) + unfitL(driven);
    const at = driven.points.indexOf(point);
    const ahead =
      at >= 0 ? driven.points.slice(at) : [point, ...driven.points.filter((each) => each.atM > point.atM)];
    return lastHolding(ahead, ({ litres }) => litres - least) ?? point.atM;
  }

  function endsGoingBack({ run: driven }: Struck, shortL: number): number {
    const behind = driven.points.filter(({ atM, backL: needL }) => atM <= point.atM && needL !== null);
    // From where the way home is as long as what is missing.
    const held = lastHolding(behind, ({ backL: needL }) => -shortL - needL!);
    return held ?? from.atM;
  }
}
