import { mostWaterPerDay } from '../../rig/rig.ts';
import type { Course, HotterStretch } from './course.ts';
import { amountBetween, jumpAt, type Profile, sumBefore } from './profile.ts';

/**
 * A profile of water along the route, reckoned at `perDay` all the way, with what the stretches add to it: as much more as
 * their use is above that. A night or a stay at either end of a stretch is one in it.
 */
export function raisedOn(hotter: readonly HotterStretch[], profile: Profile, perDay: number): Profile {
  if (hotter.length === 0) return profile;
  const endM = Math.max(...profile.atM.slice(-1));
  const bounds = hotter.flatMap(({ fromM, toM }) => [fromM, toM]).filter((placeM) => placeM < endM);
  const places = [...new Set([...profile.atM, ...bounds])].sort((a, b) => a - b);
  const raised = (fromM: number, toM: number, litres: number): number =>
    litres * (1 + addedOn(hotter, fromM, toM) / perDay);
  const atM: number[] = [];
  const sum: number[] = [];
  let total = sumBefore(profile, 0);
  for (const [index, placeM] of places.entries()) {
    const beforeM = places[index - 1];
    if (beforeM !== undefined)
      total += raised(beforeM, placeM, amountBetween(profile, beforeM, placeM) - jumpAt(profile, beforeM));
    atM.push(placeM);
    sum.push(total);
    const jump = jumpAt(profile, placeM);
    if (jump === 0) continue;
    total += raised(placeM, placeM, jump);
    atM.push(placeM);
    sum.push(total);
  }
  return { atM: Float64Array.from(atM), sum: Float64Array.from(sum) };
}

/** The most that a stretch adds which holds all of a piece, litres a day; 0 where none does. */
const addedOn = (hotter: readonly HotterStretch[], fromM: number, toM: number): number =>
  hotter
    .filter((stretch) => stretch.fromM <= fromM && toM <= stretch.toM)
    .reduce((most, { addedPerDay }) => Math.max(most, addedPerDay), 0);

/** What the heat adds a day anywhere within a stretch of the route, at the most. */
export const addedWithin = ({ hotter = [] }: Course, fromM: number, toM: number): number =>
  hotter
    .filter((stretch) => stretch.fromM <= toM && stretch.toM >= fromM)
    .reduce((most, { addedPerDay }) => Math.max(most, addedPerDay), 0);

/**
 * Litres that heat adds on a way of so many days between two places: along the route where it is hotter; of all that
 * comes beside it (detours, waiting, filling, nights that these bring on, what comes past the end) nobody knows where its
 * hours fall, and as much as on the hottest stretch is reckoned.
 */
export function addedByHeat(
  course: Course,
  { fromM, toM, days }: { fromM: number; toM: number; days: number },
): number {
  if (course.hotter === undefined || course.hotter.length === 0) return 0;
  const { high } = course.rig.water.litresPerDay;
  const daysAlong = amountBetween(course.days, fromM, toM);
  const alongL = amountBetween(course.litres.out, fromM, toM) - daysAlong * high;
  return alongL + (days - daysAlong) * (mostWaterPerDay(course.rig) - high);
}
