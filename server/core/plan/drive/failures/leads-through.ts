import { type FailingStop, failsWith } from '../../failure/failing-stops.ts';
import type { FailingSide } from '../../failure/reach.ts';
import { leaving } from '../../legs/leg-need.ts';
import { arriveWith, refill } from '../../legs/stock.ts';
import { isBound } from '../../side/supply-edge.ts';
import type { DrivenLeg } from '../drive.ts';
import { driveStretch } from '../drive-stretch.ts';

/** Float noise, litres. */
const NOISE_L = 1e-6;

interface Rule {
  readonly failing: FailingSide;
  readonly stop: FailingStop;
}

/** A leg, and what it is gone on with to a supply behind its end, where nothing was to be had. */
interface Came {
  readonly leg: DrivenLeg;
  readonly arriveL: number;
}

/**
 * Whether stops that give only some lead on, come to with less than was planned, as far as one that gives all or the end;
 * `following`: the legs from there, in route order. None of them may end at the stop that failed.
 */
export function leadsThrough(
  { failing: { side, spendReserve }, stop }: Rule,
  { leg, arriveL }: Came,
  following: readonly DrivenLeg[],
): boolean {
  let stock = arriveWith(side, leg, leg.figures.departL - arriveL);
  for (const next of following) {
    if (!isBound(next.from)) return true;
    if (failsWith(stop, next.to)) return false;
    const { tankL, cans, filledL } = refill(side, next.from, stock, next.cans);
    const drives = driveStretch({ ...next.stretch, from: leaving(next.from, filledL), tankL, cans });
    const leftL = spendReserve ? drives.arriveL : drives.marginL;
    if (leftL < -NOISE_L) return false;
    stock = arriveWith(side, { tankL, cans }, drives.figures.needL);
  }
  return true;
}
