import type { Night } from '../../contract/analysis.ts';
import { kmPerDayOf } from '../rig/rig.ts';
import type { Course } from './course.ts';
import { amountBetween, breaksInside } from './profile.ts';
import type { PlacedCamp } from './stays.ts';

/** More nights than this are not listed one by one. */
const MOST_NIGHTS = 1000;
/** A day that ends within a metre of a stop ends there; no night is put right before it. */
const NOISE_KM = 1e-3;

/**
 * Where nights are spent: at the user's camps, and between them wherever a day's hours at the slow pace end.
 * Detours are left out: they depend on the commodity, nights do not.
 */
export function nightsOf(course: Course, camps: readonly PlacedCamp[]): Night[] {
  const kmPerDay = kmPerDayOf(course.rig);
  const nights: Night[] = [];
  let leftKm = kmPerDay;
  let reachedM = 0;
  const stops = [
    ...camps.map((camp) => ({ atM: camp.atM, camp })),
    ...breaksInside(course.wayM, 0, course.lengthM).map((atM) => ({ atM, camp: null })),
    { atM: course.lengthM, camp: null },
  ].sort((a, b) => a.atM - b.atM);
  for (const stop of stops) {
    for (;;) {
      const wayKm = amountBetween(course.wayM, reachedM, stop.atM) / 1000;
      if (wayKm <= leftKm + NOISE_KM || nights.length >= MOST_NIGHTS) {
        leftKm = Math.max(0, leftKm - wayKm);
        reachedM = stop.atM;
        break;
      }
      reachedM += (leftKm / wayKm) * (stop.atM - reachedM);
      nights.push({ atKm: reachedM / 1000, name: null, from: 'pace' });
      leftKm = kmPerDay;
    }
    if (stop.camp !== null) {
      nights.push({ atKm: stop.atM / 1000, name: stop.camp.name, from: 'camp' });
      leftKm = kmPerDay;
    }
  }
  return nights;
}
