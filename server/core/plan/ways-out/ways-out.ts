import { COMMODITIES } from '../../quantity/commodities.ts';
import { canKgOf, problemOf } from '../question/problem-of.ts';
import { depotWaysOut } from './depots.ts';
import { lessWashing } from './less-washing.ts';
import { fewestMoreCans, mostCansOf } from './more-cans.ts';
import { otherStopWaysOut } from './other-stops.ts';
import { plannedCans, type WaysOutContext } from './try-change.ts';
import { WAY_OUT, type WayOut } from './way-out.ts';

/** Hours a day that nobody should be told to drive beyond (ours). */
const MOST_HOURS = 10;

/**
 * Changes with which there is a plan, each computed again and found; a smaller reserve is never one of them. `complete`
 * is false where the time ran out before all were tried, or on one of them.
 */
export function waysOut(context: WaysOutContext): { ways: WayOut[]; complete: boolean } {
  const ways: WayOut[] = [];
  for (const kind of [moreCans, lessWashing, longerDays, depotWaysOut, otherStopWaysOut]) {
    if (context.clock() >= context.until) return { ways, complete: false };
    ways.push(...kind(context));
  }
  return { ways, complete: context.clock() < context.until && context.ranOut !== true };
}

/** The fewest cans beyond those there may be, whatever limit the trip sets. */
function moreCans(context: WaysOutContext): WayOut[] {
  if (!context.moreCans) return [];
  const { reckoned } = context;
  const most = mostCansOf(problemOf(reckoned).problem);
  const fewest = fewestMoreCans({ reckoned, open: COMMODITIES, anyMass: false }, context);
  if (fewest.status === 'out-of-time') context.ranOut = true;
  if (fewest.status !== 'found') return [];
  const { mostCans } = fewest;
  const more = COMMODITIES.map((commodity) => ({
    commodity,
    count: mostCans[commodity] - most[commodity],
  })).filter(({ count }) => count > 0);
  const cans = more.length === 0 ? null : plannedCans(reckoned, context, { mostCans });
  if (cans === null) return [];
  const moreKg = more.reduce((sum, { commodity, count }) => {
    const { empty, filling } = canKgOf(reckoned.analysis.rig, commodity);
    return sum + count * (empty + filling);
  }, 0);
  const amount = more.reduce((sum, { count }) => sum + count, 0);
  const text = { phrase: 'with-more-cans', facts: { cans: more, moreKg } } as const;
  return [{ ...WAY_OUT, kind: 'more-cans', text, cans, amount, unit: 'cans', moreKg }];
}

/** The fewest more hours of driving a day, by half hours: less water is used on the way. */
function longerDays(context: WaysOutContext): WayOut[] {
  const { rig } = context.reckoned.analysis;
  for (let hours = Math.floor(rig.pace.hoursPerDay * 2) / 2 + 0.5; hours <= MOST_HOURS; hours += 0.5) {
    if (context.clock() >= context.until) return [];
    const again = context.reckon({ ...rig, pace: { ...rig.pace, hoursPerDay: hours } });
    if (!again.ok) return [];
    const cans = plannedCans(again.value, context);
    if (cans === null) continue;
    const facts = { hours, insteadOfHours: rig.pace.hoursPerDay };
    const text = { phrase: 'with-longer-days', facts } as const;
    return [{ ...WAY_OUT, kind: 'longer-days', text, cans, amount: hours, unit: 'hours a day' }];
  }
  return [];
}
