import type { Commodity, Verdict } from '../../contract/common.ts';
import { type Doubt, doubtOf } from '../gaps/course/course.ts';
import { verdictOf } from '../gaps/verdict.ts';
import { lastHolding, overBack, type WayPoint } from '../plan/drive/way-points.ts';
import type { GaugeRun } from '../plan/gauge/gauge-run.ts';
import type { LeastAboard } from '../plan/gauge/least-at.ts';
import type { PlanEdge } from '../plan/side/plan-edge.ts';
import { SLACK } from '../quantity/slack.ts';

/** One way out of a state: on to the next supply of the plan, or back to the one behind. Litres of all that can be used. */
export interface WayState {
  readonly verdict: Verdict;
  /** With the reserve. */
  readonly leastL: number;
  /** Above the reserve on getting there; below nothing: what is missing. */
  readonly marginL: number;
  /** What is left on getting there that can serve; below nothing: it does not get there. */
  readonly arriveL: number;
  /** Why that is not known, where it is not. */
  readonly unknownBy: Doubt['of'] | 'no-map' | null;
}

/** The way on. */
export interface OnState extends WayState {
  /** Where nothing that can serve is left; null where it gets there. */
  readonly runsDryM: number | null;
}

/** The way back. */
export interface BackState extends WayState {
  /** The last place, going on, from which one still gets back with the reserve; null where one does not from here. */
  readonly untilM: number | null;
}

/** What a state comes to for one commodity: metres along the route. */
export interface SideState {
  readonly commodity: Commodity;
  readonly from: PlanEdge;
  readonly to: PlanEdge;
  /** Aboard, and aboard there by the plan. */
  readonly litres: number;
  readonly plannedL: number;
  readonly on: OnState;
  /** Null where the way cannot be driven back. */
  readonly back: BackState | null;
  /** What all of this stretch takes on average, litres a metre; null for one without length. */
  readonly useLPerM: number | null;
  /** Part of what is aboard keeps for washing, in the share that the plan has there. */
  readonly sharesGrades: boolean;
}

/** What one commodity comes to; `unread`: nobody told how much is aboard; `beyond-plan`: two supplies running failed. */
export type CabSide = SideState | { readonly commodity: Commodity; readonly none: 'unread' | 'beyond-plan' };

/** What so much aboard comes to at a point of a run: it falls as the plan's does, by so much lower or higher. */
export function sideState(commodity: Commodity, least: LeastAboard, litres: number): SideState {
  const { run, point } = least;
  const { from, to, points } = run;
  const lostL = point.litres - litres;
  return {
    commodity,
    from,
    to,
    litres,
    plannedL: point.litres,
    on: onState(least, litres, lostL),
    back: backState(least, litres, lostL),
    useLPerM: averageUse(points),
    sharesGrades: run.unfitL > SLACK,
  };
}

function onState({ run, point, onL }: LeastAboard, litres: number, lostL: number): OnState {
  const { to, uncovered } = run;
  const marginL = litres - onL;
  const arriveL = run.arriveL - lostL;
  const goneL = lostL + run.unfitL;
  const runsDryM =
    arriveL >= -SLACK
      ? null
      : (lastHolding(pointsAhead(run, point), (ahead) => ahead.litres - goneL) ?? point.atM);
  const firstUncovered = uncovered.find(({ toM }) => toM > point.atM);
  const doubt = doubtOf(run, { kind: 'passing', atM: point.atM }, to);
  const verdict = verdictOf({
    arriveL,
    marginL,
    runsDryM,
    firstUncoveredM: firstUncovered === undefined ? null : Math.max(firstUncovered.fromM, point.atM),
    atBestUnknown: doubt?.leavesUnknown === true,
  });
  return { verdict, leastL: onL, marginL, arriveL, unknownBy: unknownBy(verdict, doubt), runsDryM };
}

function backState({ run, point, backL }: LeastAboard, litres: number, lostL: number): BackState | null {
  if (backL === null) return null;
  const { from, keepBackL, unfitL } = run;
  const marginL = litres - backL;
  const arriveL = marginL + keepBackL - unfitL;
  const doubt = doubtOf(run, from, { kind: 'passing', atM: point.atM });
  const verdict = verdictOf({
    arriveL,
    marginL,
    runsDryM: null,
    firstUncoveredM: null,
    atBestUnknown: doubt?.leavesUnknown === true,
  });
  const untilM = lastHolding(pointsAhead(run, point), (ahead) => overBack(run, ahead, lostL));
  return { verdict, leastL: backL, marginL, arriveL, unknownBy: unknownBy(verdict, doubt), untilM };
}

/** A doubt that leaves it unknown, else that no map tells of supplies. */
const unknownBy = (verdict: Verdict, doubt: Doubt | null): WayState['unknownBy'] =>
  verdict !== 'unknown' ? null : doubt?.leavesUnknown === true ? doubt.of : 'no-map';

/** A point of a run, and those behind it. */
function pointsAhead({ points }: GaugeRun, point: WayPoint): WayPoint[] {
  const index = points.indexOf(point);
  return index >= 0 ? points.slice(index) : [point, ...points.filter(({ atM }) => atM > point.atM)];
}

function averageUse(points: GaugeRun['points']): number | null {
  const [first] = points;
  const last = points.at(-1) ?? first;
  const lengthM = last.atM - first.atM;
  return lengthM > 0 && first.litres > last.litres ? (first.litres - last.litres) / lengthM : null;
}
