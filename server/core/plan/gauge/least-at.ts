import { at } from '../../lists/at.ts';
import { pointsThere, type WayPoint, wayPointBetween } from '../drive/way-points.ts';
import type { GaugeRun } from './gauge-run.ts';

/** A place on the road as the gauge of one commodity takes it. */
export interface GaugePlace {
  readonly atM: number;
  readonly at: 'start' | 'step' | 'arriving' | 'leaving' | 'turn-back' | 'end';
  /** Whether it is a stop or a turn-back point of that very commodity. */
  readonly own: boolean;
}

/** The least to have aboard at a point of a run, litres of all that can be used. */
export interface LeastAboard {
  readonly run: GaugeRun;
  readonly point: WayPoint;
  /** To go on to where the run ends, with the reserve. */
  readonly onL: number;
  /** To go back to where it begins, with the reserve; null where the way cannot be driven back. */
  readonly backL: number | null;
}

/**
 * The least to have aboard at a place: the one rule of gauge table and cab view. Before a stop the run that ends there
 * speaks, from the moment of leaving the one that begins there. `runs`: all of the route in its order, at least one.
 */
export function leastAt(runs: readonly GaugeRun[], { atM, at: kind, own }: GaugePlace): LeastAboard {
  const first = at(runs, 0);
  if (kind === 'start') return leavingSupply(first);
  if (own && kind === 'leaving') return leavingSupply(runs.findLast(({ from }) => from.atM <= atM) ?? first);
  const run =
    own && kind === 'turn-back'
      ? runs.findLast(({ from, to }) => from.atM <= atM && to.atM > atM)
      : runs.find(({ from, to }) => from.atM < atM && to.atM >= atM);
  return leastIn(run ?? first, { atM, at: kind });
}

/** The same at a place of one run; what lies outside of it is taken for its nearer end. */
export function leastIn(run: GaugeRun, { atM, at: kind }: Omit<GaugePlace, 'own'>): LeastAboard {
  const there = pointsThere(run.points, atM, wayPointBetween);
  // Before a halt for the other commodity the way to it is still to come, after it that way is gone.
  return least(run, kind === 'leaving' ? leftWith(run, there) : there[0]);
}

/** What a place is left with after a halt for the other commodity. Of the end of a stretch a run tells only what it is come to with. */
function leftWith({ to, lastHaltsL }: GaugeRun, there: readonly [WayPoint, ...WayPoint[]]): WayPoint {
  const last = there.at(-1) ?? there[0];
  return last.atM === to.atM ? { ...last, litres: last.litres - lastHaltsL } : last;
}

/** At the supply itself: what has to be filled to go on. */
export const leavingSupply = (run: GaugeRun): LeastAboard =>
  least(run, { ...run.points[0], litres: run.departL, backL: 0 });

const least = (run: GaugeRun, point: WayPoint): LeastAboard => ({
  run,
  point,
  onL: point.litres - run.marginL,
  backL: point.backL === null ? null : point.backL + run.keepBackL,
});
