import fc from 'fast-check';
import { checkPlan } from './checker.ts';
import { Notebook } from './reckoning/notebook.ts';
import { plannedTrip } from './world/planned.ts';
import { drawnTrips, type World, worldOf } from './world/world.ts';

/** Of this kind are those that every change is held against. */
export const SEED = 20_261_130;

/** What came of checking many trips. */
export interface Checked {
  readonly book: Notebook;
  /** Trips by what became of them: with a plan, without, with one against one failure. */
  readonly found: number;
  readonly none: number;
  readonly safe: number;
}

/** The random trips of a seed, the first of them always the same however many there are. */
export const worldsOf = (trips: number, seed: number): World[] =>
  fc.sample(drawnTrips, { numRuns: trips, seed }).map(worldOf);

/** Plans trips and checks the plans; each disagreement names the number of its trip. */
export function checkTrips(trips: number, seed: number): Checked {
  const book = new Notebook();
  let [found, none, safe] = [0, 0, 0];
  for (const [number, world] of worldsOf(trips, seed).entries()) {
    const planned = plannedTrip(world);
    const { status, oneFailure } = planned.plan;
    if (status === 'found') found += 1;
    else none += 1;
    if (oneFailure?.status === 'found') safe += 1;
    book.add(checkPlan(world, planned), `trip ${number}, `);
  }
  return { book, found, none, safe };
}
