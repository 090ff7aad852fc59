import { metresOf } from '../../quantity/rates.ts';
import type { Trip } from '../../trip/settle-trip.ts';
import type { NightsAt } from './fuel-facts.ts';

/**
 * Nights for which a heater burns fuel: one wherever a day ends, as many as a camp's days at a camp, and those of
 * the trip's own stays, days begun counted as whole.
 */
export function nightsAt(
  nights: readonly { atM: number; from: 'camp' | 'pace' }[],
  trip: Pick<Trip, 'campDays' | 'stays'>,
): NightsAt[] {
  return [
    ...nights.map((night) => ({
      atM: night.atM,
      nights: night.from === 'camp' ? Math.max(1, Math.ceil(trip.campDays)) : 1,
    })),
    ...trip.stays.map((stay) => ({ atM: metresOf(stay.atKm), nights: Math.ceil(stay.days) })),
  ];
}
