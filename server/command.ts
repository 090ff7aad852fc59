import { parseArgs } from 'node:util';
import { analyseTrip } from './app/analyse-trip.ts';
import { loadTrip } from './app/load-trip.ts';
import { ProgressLine } from './app/text/progress-line.ts';
import { reportText } from './app/text/report-text.ts';
import { today } from './app/today.ts';
import { compare } from './commands/compare.ts';
import { learn } from './commands/learn.ts';
import { PLAN_HELP, plan } from './commands/plan.ts';
import { readPlan } from './commands/read-plan.ts';
import { refuse, refuseOption } from './commands/refuse.ts';
import type { TripFile } from './contract/trip.ts';
import { InputProblem, type Outcome, type Problem, problemLine } from './core/problem.ts';
import { openingHours } from './io/opening-hours.ts';
import { tripFileSet } from './io/trip-file-set.ts';

const USAGE = `npm run -s drystage -- gaps ROUTE.gpx --supply EXTRACT [--supply EXTRACT ...] --rig RIG.yaml [--trip TRIP.yaml] [--part PART] [--json]`;

const HELP = `${USAGE}

Finds the fuel and water gaps of a route and says whether the vehicle gets over them with its reserve.

  ROUTE.gpx        the planned route: GPX 1.0 or 1.1 with tracks or routes
  --supply EXTRACT OpenStreetMap data: .osm.pbf, .osm (also .gz, .bz2), Overpass JSON, GeoJSON or GPX waypoints;
                   the content decides, not the name; may be given several times
  --rig RIG.yaml   the vehicle: tanks, use, reserves, pace (YAML or JSON)
  --trip TRIP.yaml this journey: what is aboard, how far on from the end, corridor (YAML or JSON)
  --part PART      number (from 1) or name of the one track or route to take; default: the trip's, else all
  --json           the whole analysis as JSON
  --help           this text

Further commands, each with a --help of its own:
  learn LOG.csv    what a log of fill-ups or of water teaches
  compare ROUTE    several rigs on one route
  plan ROUTE       where to fill and what to carry over which stretch

Exit status: 0 when the analysis ran, whatever its verdicts; 2 when an input cannot be used, with one line that says
why on stderr; 1 when the program itself is at fault.
`;

/** Where a run of the command reads and writes; process gives the real one. */
export interface CommandIo {
  out: (text: string) => void;
  err: (text: string) => void;
  /** Whether stderr is a terminal, for the progress line. */
  terminal: boolean;
}

const COMMANDS = 'gaps, learn, compare or plan as the first word';

export interface GapsArguments {
  route: string;
  supplies: string[];
  rig: string;
  trip: string | null;
  part: NonNullable<TripFile['part']> | null;
  json: boolean;
}

/** Reads the command line; null asks for the help. */
export function readArguments(args: readonly string[]): Outcome<GapsArguments | null> {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(args);
  } catch (error) {
    return refuseOption(error, '--supply, --rig, --trip, --part, --json, --help');
  }
  const { values, positionals } = parsed;
  if (values.help === true) return { ok: true, value: null };
  const [command, route, ...more] = positionals;
  if (command === undefined) return refuse(null, 'no command', COMMANDS);
  if (command !== 'gaps' && command !== 'plan') return refuse(null, `the command "${command}"`, COMMANDS);
  if (route === undefined) return refuse('ROUTE.gpx', 'no route', `a GPX file after ${command}`);
  if (more.length > 0) return refuse(more[0]!, 'a second route', 'one, and extracts each after --supply');
  const { supply, rig, trip, part } = values;
  if (supply === undefined) return refuse('--supply', 'no extract', 'at least one --supply EXTRACT');
  if (rig === undefined) return refuse('--rig', 'no rig', '--rig RIG.yaml');
  for (const [name, given] of Object.entries({ rig, trip, part })) {
    if (given !== undefined && given.length > 1) return refuse(`--${name}`, `${given.length} of them`, 'one');
  }
  const chosen = part?.[0];
  return {
    ok: true,
    value: {
      route,
      supplies: supply,
      rig: rig[0]!,
      trip: trip?.[0] ?? null,
      part: chosen === undefined ? null : /^[1-9]\d*$/.test(chosen) ? Number(chosen) : chosen,
      json: values.json === true,
    },
  };
}

const parse = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
    allowPositionals: true,
    strict: true,
    options: {
      supply: { type: 'string', multiple: true },
      rig: { type: 'string', multiple: true },
      trip: { type: 'string', multiple: true },
      part: { type: 'string', multiple: true },
      json: { type: 'boolean' },
      help: { type: 'boolean', short: 'h' },
    },
  });

/** Runs the command and gives its exit status; an unusable input is one line on `err`. */
export async function runCommand(args: readonly string[], io: CommandIo): Promise<number> {
  const outcome = await caught(chosen(args, io));
  if (outcome.ok) return 0;
  io.err(`${problemLine(outcome.problem)}\n`);
  return 2;
}

/** The command that the first word names. */
async function chosen(args: readonly string[], io: CommandIo): Promise<Outcome<null>> {
  const [command, ...rest] = args;
  if (command === 'learn') return learn(rest, io);
  if (command === 'compare') return compare(rest, io);
  const read = readArguments(args);
  if (!read.ok) return read;
  if (command === 'plan') {
    if (read.value !== null) return plan(read.value, io);
    io.out(PLAN_HELP);
    return { ok: true, value: null };
  }
  if (read.value !== null) return gaps(read.value, io);
  io.out(HELP);
  return { ok: true, value: null };
}

async function gaps(asked: GapsArguments, io: CommandIo): Promise<Outcome<null>> {
  const plan = await readPlan(asked.rig, asked.trip);
  if (!plan.ok) return plan;
  const { rig } = plan.value;
  const trip = asked.part === null ? plan.value.trip : { ...plan.value.trip, part: asked.part };

  const progress = io.terminal ? new ProgressLine(io.err, Date.now) : null;
  const loaded = await loadTrip(
    {
      route: { path: asked.route, source: asked.route },
      extracts: asked.supplies.map((path) => ({ path, source: path })),
      withGround: false,
      notice: null,
    },
    tripFileSet,
    progress === null ? {} : { onProgress: (...at) => progress.show(...at) },
  );
  progress?.clear();
  if (!loaded.ok) return loaded;
  const outcome = analyseTrip(loaded.value, rig, trip, today(), openingHours);
  if (!outcome.ok) return { ok: false, problem: named(outcome.problem, asked.route) };
  const { analysis } = outcome.value;
  io.out(asked.json ? `${JSON.stringify(analysis)}\n` : reportText(analysis, loaded.value.notice));
  return { ok: true, value: null };
}

/** What the core refuses concerns the route: it knows no file names. */
const named = (problem: Problem, source: string): Problem => ({
  ...problem,
  source: problem.source ?? source,
});

async function caught<T>(work: Promise<Outcome<T>>): Promise<Outcome<T>> {
  try {
    return await work;
  } catch (error) {
    if (error instanceof InputProblem) return { ok: false, problem: error.problem };
    throw error;
  }
}
