import { pairsOf } from '../../lists/pairs.ts';
import { SLACK } from '../../quantity/slack.ts';
import { pointBetween, type Run, type RunPoint } from '../drive/run.ts';
import { unfitL } from './stretch-row.ts';

/** Something that takes litres at one place; both sums may depend on what is aboard there. */
export interface Mishap {
  /** Lost for going on, litres. */
  readonly lostL: (point: RunPoint) => number;
  /** Lost for going back; as for going on when left out. */
  readonly lostBackL?: (point: RunPoint) => number;
  /** By how much the reserve on going on is larger afterwards. */
  readonly moreReserveL?: number;
}

/** A mishap at one place. */
export interface Struck {
  readonly run: Run;
  readonly point: RunPoint;
  /** On arrival at the next supply, and at the supply behind. */
  readonly onL: number;
  readonly backL: number | null;
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

/**
 * Where a mishap does most harm: of all places of all runs the one where the better of going on and going back leaves
 * least, the first of ties. Exact: between two points both change along straight lines, which may cross once.
 */
export function worstPlace(runs: readonly Run[], mishap: Mishap): Struck | null {
  let worst: Struck | null = null;
  for (const run of runs)
    for (const struck of placesOf(run, mishap))
      if (worst === null || bestL(struck) < bestL(worst) - SLACK) worst = struck;
  return worst;
}

/** A mishap at every place of a run where it may be worst, in order: its points, and where between two it bends. */
function* placesOf(run: Run, mishap: Mishap): Generator<Struck> {
  let before: Struck | null = null;
  for (const point of run.points) {
    const struck = strike(run, mishap, point);
    if (before !== null && before.point.atM < point.atM) yield* bendsBetween(mishap, before, struck);
    yield struck;
    before = struck;
  }
}

/** Between two points: where what is lost bends, and where going on and going back come out alike. */
function bendsBetween(mishap: Mishap, before: Struck, after: Struck): Struck[] {
  const { run } = before;
  const strikeAt = (atM: number) => strike(run, mishap, pointBetween(before.point, after.point, atM));
  const bendM = lossBendM(mishap, before.point, after.point);
  const bend = bendM === null ? [] : [strikeAt(bendM)];
  const crossings = pairsOf([before, ...bend, after]).flatMap(([a, b]) => {
    const atM = crossingM(a, b);
    return atM === null ? [] : [strikeAt(atM)];
  });
  return [...bend, ...crossings];
}

/** A tank that is lost whole until it is all that there is: what is lost bends where the tanks are down to it. */
function lossBendM({ lostL }: Mishap, before: RunPoint, after: RunPoint): number | null {
  const lengthM = after.atM - before.atM;
  const middle = pointBetween(before, after, before.atM + lengthM / 2);
  const lostBeforeL = lostL(before);
  if (Math.abs(lostL(middle) - (lostBeforeL + lostL(after)) / 2) <= SLACK) return null;
  const share = (before.tankL - lostBeforeL) / (before.tankL - after.tankL);
  return before.atM + Math.min(1, Math.max(0, share)) * lengthM;
}

/** Where going on and going back come out alike; null where they do not. */
function crossingM(a: Struck, b: Struck): number | null {
  if (a.backL === null || b.backL === null) return null;
  const [apartL, apartLaterL] = [a.onL - a.backL, b.onL - b.backL];
  if (apartL * apartLaterL >= 0) return null;
  return a.point.atM + (apartL / (apartL - apartLaterL)) * (b.point.atM - a.point.atM);
}
