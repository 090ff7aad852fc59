import { staysBroken } from './stays-broken.ts';
import { cansWith, isOver, type WaysOutContext } from './try-change.ts';
import { WAY_OUT, type WayOut } from './way-out.ts';

/** Hours a day that nobody should be told to drive beyond (ours). */
const MOST_HOURS = 10;
const STEP_HOURS = 0.5;

/** The fewest more hours of driving a day, by half hours: less water is used on the way. */
export function longerDaysWay(context: WaysOutContext): WayOut[] {
  const { rig } = context.reckoned.analysis;
  const { hoursPerDay } = rig.pace;
  const first = Math.floor(hoursPerDay / STEP_HOURS) * STEP_HOURS + STEP_HOURS;
  for (let hours = first; hours <= MOST_HOURS; hours += STEP_HOURS) {
    if (isOver(context)) return [];
    const longer = { ...rig, pace: { ...rig.pace, hoursPerDay: hours } };
    if (staysBroken(context, longer)) continue;
    const again = context.reckon(longer);
    if (!again.ok) return [];
    const cans = cansWith(again.value, context);
    if (cans === null) continue;
    const text = { phrase: 'with-longer-days', facts: { hours, insteadOfHours: hoursPerDay } } as const;
    return [{ ...WAY_OUT, kind: 'longer-days', text, cans, amount: hours, unit: 'hours a day' }];
  }
  return [];
}
