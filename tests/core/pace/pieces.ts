import { sumBefore } from '../../../server/core/gaps/course/profile.ts';
import type { Piece, Schedule, Stop } from '../../../server/core/pace/schedule.ts';

/** Stretches one after another: km, km/h and hours a day of each. */
export function piecesOf(...stretches: { km: number; kmPerHour: number; hoursPerDay: number }[]): Piece[] {
  let fromM = 0;
  return stretches.map(({ km, kmPerHour, hoursPerDay }) => {
    const toM = fromM + km * 1000;
    const hours = km / kmPerHour;
    const piece = { fromM, toM, hours, dayShare: hours / hoursPerDay };
    fromM = toM;
    return piece;
  });
}

export const camp = (km: number, nights = 1): Stop => ({
  atM: km * 1000,
  kind: 'camp',
  name: 'camp',
  days: nights,
});
export const stay = (km: number, days: number): Stop => ({ atM: km * 1000, kind: 'stay', name: null, days });

/** Hours since departure on reaching a place. */
export const hoursAt = (schedule: Schedule, km: number): number => sumBefore(schedule.elapsedH, km * 1000);
