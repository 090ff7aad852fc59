/**
 * npm run checker -- [TRIPS [SEED [NUMBER]]]
 * Checks the plans of so many random trips; with a number shows that trip, and what is wrong with its plan.
 */
import { checkPlan } from './checker.ts';
import { checkTrips, SEED, worldsOf } from './trips.ts';
import { plannedTrip } from './world/planned.ts';

const [trips = 1000, seed = SEED, number] = process.argv.slice(2).map(Number);

if (number === undefined) {
  const { book, found, none, safe } = checkTrips(trips, seed);
  console.log(book.disagreements.join('\n'));
  console.log(
    `${trips} trips of seed ${seed}: ${found} with a plan, ${safe} with one against one failure, ${none} without`,
  );
  console.log(
    `${[...book.made.values()].reduce((sum, times) => sum + times, 0)} checks, ${book.disagreements.length} disagreements`,
  );
  process.exitCode = book.disagreements.length === 0 ? 0 : 1;
} else {
  const world = worldsOf(number + 1, seed).at(-1);
  if (world === undefined) throw new Error('trips are counted from 0');
  const { plan } = plannedTrip(world);
  console.log(JSON.stringify({ rig: world.rig, trip: world.trip, plan }, null, 2));
  console.log(checkPlan(world, plannedTrip(world)).disagreements.join('\n'));
}
