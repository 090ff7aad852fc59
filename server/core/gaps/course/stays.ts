import type { Caution } from '../../phrases/cautions.ts';
import { locate } from '../../route/passings/locate.ts';
import type { RouteLine } from '../../route/route-line.ts';
import type { Trip } from '../../trip/settle-trip.ts';
import type { Stay } from './course.ts';

/** A place where the user means to spend a night, as marked. */
export interface Camp {
  lon: number;
  lat: number;
  name: string | null;
}

export interface PlacedCamp {
  atM: number;
  name: string | null;
}

/** Camps at their nearest place of the route, in route order; those outside the corridor come out as cautions. */
export function placeCamps(
  route: RouteLine,
  camps: readonly Camp[],
  corridorM: number,
): { placed: PlacedCamp[]; cautions: Caution[] } {
  const placed: PlacedCamp[] = [];
  const cautions: Caution[] = [];
  for (const camp of camps) {
    const { atM, offM } = locate(route, camp.lon, camp.lat);
    if (offM <= corridorM) placed.push({ atM, name: camp.name });
    else {
      cautions.push({ code: 'camp-off-route', facts: { name: camp.name, offM }, fromM: atM, toM: atM });
    }
  }
  return { placed: placed.sort((a, b) => a.atM - b.atM), cautions };
}

/** Every halt that costs days, in route order: camps at the trip's days a camp, and the trip's own stays. */
export function staysOf(
  route: RouteLine,
  trip: Trip,
  camps: readonly PlacedCamp[],
): { stays: Stay[]; cautions: Caution[] } {
  const own = trip.stays.map(({ atM, days }) => ({ atM, days }));
  const cautions = own
    .filter(({ atM }) => atM > route.lengthM)
    .map(({ atM }): Caution => ({ code: 'stay-off-route', facts: { atM }, fromM: atM, toM: atM }));
  // A stay at or past the end belongs to the last gap, so it is put just before the end.
  const lastM = Math.max(0, route.lengthM - 1e-3);
  const stays = [...camps.map((camp) => ({ atM: camp.atM, days: trip.campDays })), ...own]
    .filter((stay) => stay.days > 0)
    .map((stay) => ({ ...stay, atM: Math.min(stay.atM, lastM) }))
    .sort((a, b) => a.atM - b.atM);
  return { stays, cautions };
}
