import { loadTrip } from '../app/load-trip.ts';
import type { LoadedTrip } from '../app/loaded-trip.ts';
import { ProgressLine } from '../app/text/lines/progress-line.ts';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome } from '../core/input/problem.ts';
import { tripFileSet } from '../io/trip-file-set.ts';
import type { CommandIo } from './command-io.ts';
import { loadKeptTrip, supplyFile } from './kept-inputs.ts';
import type { TripArguments } from './trip-arguments.ts';

/** Reads the route and the extracts of the arguments, or a kept trip, with a progress line where there is a terminal. */
export async function loadFiles(args: TripArguments, io: CommandIo): Promise<Outcome<LoadedTrip>> {
  if (args.isKept) return loadKeptTrip(args.route);
  const progress = io.terminal ? new ProgressLine(io.err, Date.now) : null;
  const request = {
    route: { path: args.route, source: args.route },
    extracts: await Promise.all(args.supplies.map(supplyFile)),
    withGround: false,
    notice: null,
  };
  const watch = progress === null ? {} : { onProgress: progress.show.bind(progress) };
  const outcome = await loadTrip(request, tripFileSet, watch);
  progress?.clear();
  return outcome;
}

/** The trip with the part of the command line, which goes before its own. */
export const withPart = (trip: TripFile, { part }: TripArguments): TripFile =>
  part === null ? trip : { ...trip, part };

/** What the core refuses concerns the route: it knows no file names. */
export const ofRoute = <T>(outcome: Outcome<T>, { route }: TripArguments): Outcome<T> =>
  outcome.ok
    ? outcome
    : { ok: false, problem: { ...outcome.problem, source: outcome.problem.source ?? route } };
