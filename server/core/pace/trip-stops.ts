import type { PlacedCamp } from '../gaps/course/stays.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { Trip } from '../trip/settle-trip.ts';
import type { Stop } from './schedule.ts';

/** A stop at or past the end is made this far before it, metres, so that it belongs to the last gap. */
const BEFORE_END_M = 1e-3;
/** A camp of the trip's this near to another is the same, metres (ours). */
const SAME_CAMP_M = 100;

/** The route's own camps and those that the trip names, in route order; one past the end comes out as a caution. */
export function allCamps(
  lengthM: number,
  trip: Pick<Trip, 'camps'>,
  placed: readonly PlacedCamp[],
): { camps: PlacedCamp[]; cautions: Caution[] } {
  const cautions: Caution[] = [];
  const camps = [...placed];
  for (const camp of trip.camps) {
    const { atM } = camp;
    const place = { fromM: atM, toM: atM };
    if (atM > lengthM) {
      cautions.push({ code: 'camp-off-route', facts: { pastEndAtM: atM }, ...place });
    } else if (camps.some((known) => Math.abs(known.atM - atM) < SAME_CAMP_M)) {
      cautions.push({ code: 'camp-twice', facts: { atM, withinM: SAME_CAMP_M }, ...place });
    } else camps.push({ atM, name: camp.name });
  }
  return { camps: camps.sort((a, b) => a.atM - b.atM), cautions };
}

/**
 * Camps and stays in route order. A camp is for as many whole nights as it takes days, at least one: the rest of the
 * day on which it is reached is not driven.
 */
export function stopsOf(
  lengthM: number,
  trip: Pick<Trip, 'campDays' | 'stays'>,
  camps: readonly PlacedCamp[],
): Stop[] {
  const lastM = Math.max(0, lengthM - BEFORE_END_M);
  const nights = Math.max(1, Math.ceil(trip.campDays));
  const stops: Stop[] = [
    ...camps.map((camp) => ({ ...camp, kind: 'camp' as const, days: nights })),
    ...trip.stays
      .filter((stay) => stay.days > 0)
      .map((stay) => ({
        atM: stay.atM,
        kind: 'stay' as const,
        name: stay.name,
        days: stay.days,
      })),
  ];
  // Camps stand before stays already: at one place they stay so.
  return stops.map((stop) => ({ ...stop, atM: Math.min(stop.atM, lastM) })).sort((a, b) => a.atM - b.atM);
}
