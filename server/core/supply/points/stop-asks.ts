import type { PlanStopAsk } from '../../../contract/plan.ts';
import type { Passing } from './passing.ts';

/** What the user says of a stop, by any of its ids. */
export const askOf = (
  asks: readonly PlanStopAsk[],
  { id, alsoIds }: Pick<Passing, 'id' | 'alsoIds'>,
): PlanStopAsk | undefined => asks.find((one) => one.id === id || alsoIds.includes(one.id));

/**
 * Hours of waiting at a supply: as the user says, else until it opens by its mapped hours, the longest of all times at
 * which one may come. One that does not open at all counts nowhere.
 */
export function waitHoursAt({ arrival }: Pick<Passing, 'arrival'>, ask: PlanStopAsk | undefined): number {
  if (ask?.waitHours !== undefined) return ask.waitHours;
  return arrival?.open === false ? (arrival.waitHours ?? 0) : 0;
}
