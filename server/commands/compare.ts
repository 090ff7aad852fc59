import { basename } from 'node:path';
import { compareRigs, type NamedRig, type RigsAndTrip } from '../app/compare/compare.ts';
import { compareText } from '../app/text/compare-text.ts';
import { today } from '../app/today.ts';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome, Problem } from '../core/input/problem.ts';
import { openingHours } from '../io/opening-hours.ts';
import { tripCommand } from './command.ts';
import { jsonLine } from './json-line.ts';
import { keptTrip } from './kept-inputs.ts';
import { loadFiles, ofRoute, withPart } from './load-files.ts';
import { readPlan } from './read-plan.ts';
import { refuse } from './refuse.ts';
import type { TripArguments } from './trip-arguments.ts';

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

/** Several rigs on one route. */
export const compare = tripCommand({
  name: 'compare',
  help: HELP,
  mostRigs: MOST_RIGS,
  run: async (args, io) => {
    const plan = await readRigs(args);
    if (!plan.ok) return plan;
    const loaded = await loadFiles(args, io);
    if (!loaded.ok) return loaded;
    const rigs = { ...plan.value, trip: withPart(plan.value.trip, args) };
    const outcome = ofRoute(compareRigs(loaded.value, rigs, { today: today(), openingHours }), args);
    if (!outcome.ok) return outcome;
    return { ok: true, value: args.json ? jsonLine(outcome.value) : compareText(outcome.value) };
  },
});

/** The rigs, each called by its file where it has no name, and the trip, which must fit every one of them. */
async function readRigs(args: TripArguments): Promise<Outcome<RigsAndTrip>> {
  const rigs: NamedRig[] = [];
  const kept = args.isKept ? keptTrip(args.route) : null;
  let trip: TripFile = kept?.trip ?? {};
  if (kept !== null && args.rigs.length === 0) return refuse('--rig', 'no rig', '--rig RIG.yaml');
  for (const path of args.rigs) {
    const plan = await readPlan(path, args.trip, kept);
    if (!plan.ok) return { ok: false, problem: withRig(plan.problem, path, args) };
    rigs.push({ rig: plan.value.rig, fallback: basename(path) });
    trip = plan.value.trip;
  }
  return { ok: true, value: { rigs, trip } };
}

/** The trip is held against each rig: a problem of it says which one it does not fit. */
const withRig = (problem: Problem, rig: string, { trip }: TripArguments): Problem =>
  problem.code === 'trip-invalid' && problem.source === trip
    ? { ...problem, came: `${problem.came} with the rig ${rig}` }
    : problem;
