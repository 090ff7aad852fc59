import type { RigAndTrip } from '../app/input/plan-input.ts';
import type { LoadedTrip } from '../app/loaded-trip.ts';
import type { Outcome } from '../core/input/problem.ts';
import type { CommandIo } from './command-io.ts';
import { keptTrip } from './kept-inputs.ts';
import { loadFiles, withPart } from './load-files.ts';
import { readPlan } from './read-plan.ts';
import type { TripArguments } from './trip-arguments.ts';

/** All files of a command on a route with one rig, read and checked: the small ones first. */
export interface ReadTrip extends RigAndTrip {
  loaded: LoadedTrip;
}

export async function readTrip(args: TripArguments, io: CommandIo): Promise<Outcome<ReadTrip>> {
  const plan = await readPlan(args.rigs[0], args.trip, args.isKept ? keptTrip(args.route) : null);
  if (!plan.ok) return plan;
  const loaded = await loadFiles(args, io);
  if (!loaded.ok) return loaded;
  const { rig, trip } = plan.value;
  return { ok: true, value: { loaded: loaded.value, rig, trip: withPart(trip, args) } };
}
