import { depotWay } from './depots.ts';
import { fillFirstWay } from './fill-first.ts';
import { lessWashingWay } from './less-washing.ts';
import { longerDaysWay } from './longer-days.ts';
import { moreCansWay } from './more-cans.ts';
import { otherStopWays } from './other-stops.ts';
import { isOver, type WaysOutAsk, type WaysOutContext } from './try-change.ts';
import type { WayOut } from './way-out.ts';

/** In the order in which they are tried. */
const CHANGES = [fillFirstWay, moreCansWay, lessWashingWay, longerDaysWay, depotWay, otherStopWays];

/**
 * Changes with which there is a plan, each computed again and found; a smaller reserve is never one of them. `complete`
 * is false where the time ran out before all were tried, or on one of them.
 */
export function waysOut(ask: WaysOutAsk): { ways: WayOut[]; complete: boolean } {
  const context: WaysOutContext = { ...ask, state: { ranOut: false } };
  const ways: WayOut[] = [];
  for (const waysBy of CHANGES) {
    if (isOver(context)) return { ways, complete: false };
    ways.push(...waysBy(context));
  }
  return { ways, complete: !isOver(context) && !context.state.ranOut };
}
