import { basename } from 'node:path';
import { compareRigs } from '../app/compare.ts';
import { compareText } from '../app/text/compare-text.ts';
import { today } from '../app/today.ts';
import type { RigFile } from '../contract/rig.ts';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome } from '../core/input/problem.ts';
import { openingHours } from '../io/opening-hours.ts';
import type { CommandIo } from './command-io.ts';
import { loadAsked, ofRoute, withAskedPart } from './load-asked.ts';
import { readPlan } from './read-plan.ts';
import { readTripArguments } from './trip-arguments.ts';

/** As many as the contract takes; the schemas' package is not loaded for it. */
const MOST_RIGS = 12;

const HELP = `npm run -s drystage -- compare ROUTE.gpx --supply EXTRACT [--supply EXTRACT ...] --rig A.yaml --rig B.yaml [--trip TRIP.yaml] [--part PART] [--json]

Holds several rigs against one route, in one table: the worst gap of each commodity, extra cans, days, masses.

  ROUTE.gpx, --supply, --trip, --part   as of gaps; route and extracts are read once
  --rig RIG.yaml                        a rig; given for each one, ${MOST_RIGS} at most
  --json                                the whole comparison as JSON
  --help                                this text

Exit status as of gaps.
`;

/** Runs `compare` with what stands after it on the command line. */
export async function compare(args: readonly string[], io: CommandIo): Promise<Outcome<null>> {
  const read = readTripArguments('compare', args, MOST_RIGS);
  if (!read.ok) return read;
  if (read.value === null) {
    io.out(HELP);
    return { ok: true, value: null };
  }
  const asked = read.value;
  const plans: { rig: RigFile; trip: TripFile; fallback: string }[] = [];
  for (const path of asked.rigs) {
    const plan = await readPlan(path, asked.trip);
    // The trip is held against each rig: say which one it does not fit.
    if (!plan.ok) {
      const { problem } = plan;
      const isOfTrip = problem.code === 'trip-invalid' && problem.source === asked.trip;
      return isOfTrip ? refusedWith(problem, path) : plan;
    }
    plans.push({ ...plan.value, fallback: basename(path) });
  }
  const loaded = await loadAsked(asked, io);
  if (!loaded.ok) return loaded;
  const trip = withAskedPart(plans[0]!.trip, asked);
  const outcome = ofRoute(compareRigs(loaded.value, plans, trip, today(), openingHours), asked);
  if (!outcome.ok) return outcome;
  io.out(asked.json ? `${JSON.stringify(outcome.value)}\n` : compareText(outcome.value));
  return { ok: true, value: null };
}

const refusedWith = (
  problem: Extract<Outcome<never>, { ok: false }>['problem'],
  rig: string,
): Outcome<never> => ({
  ok: false,
  problem: { ...problem, came: `${problem.came} with the rig ${rig}` },
});
