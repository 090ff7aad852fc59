import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { compareRigs } from '../app/compare.ts';
import { loadTrip } from '../app/load-trip.ts';
import { compareText } from '../app/text/compare-text.ts';
import { ProgressLine } from '../app/text/progress-line.ts';
import { today } from '../app/today.ts';
import type { CommandIo } from '../command.ts';
import type { RigFile } from '../contract/rig.ts';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome } from '../core/problem.ts';
import { openingHours } from '../io/opening-hours.ts';
import { tripFileSet } from '../io/trip-file-set.ts';
import { readPlan } from './read-plan.ts';
import { refuse, refuseOption } from './refuse.ts';

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

interface CompareArguments {
  route: string;
  supplies: string[];
  rigs: string[];
  trip: string | null;
  part: NonNullable<TripFile['part']> | null;
  json: boolean;
}

/** Runs `compare` with what stands after it on the command line. */
export async function compare(args: readonly string[], io: CommandIo): Promise<Outcome<null>> {
  const read = readArguments(args);
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
  const trip = { ...plans[0]!.trip, ...(asked.part === null ? {} : { part: asked.part }) };
  const outcome = compareRigs(loaded.value, plans, trip, today(), openingHours);
  if (!outcome.ok) {
    return { ok: false, problem: { ...outcome.problem, source: outcome.problem.source ?? asked.route } };
  }
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

function readArguments(args: readonly string[]): Outcome<CompareArguments | null> {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(args);
  } catch (error) {
    return refuseOption(error, '--supply, --rig, --trip, --part, --json, --help');
  }
  const { values, positionals } = parsed;
  if (values.help === true) return { ok: true, value: null };
  const [route, ...more] = positionals;
  if (route === undefined) return refuse('ROUTE.gpx', 'no route', 'a GPX file after compare');
  if (more.length > 0)
    return refuse(more[0]!, 'a second route', 'one, and each rig after a --rig of its own');
  const { supply, rig, trip, part } = values;
  if (supply === undefined) return refuse('--supply', 'no extract', 'at least one --supply EXTRACT');
  if (rig === undefined) return refuse('--rig', 'no rig', 'a --rig RIG.yaml for each rig');
  if (rig.length > MOST_RIGS) return refuse('--rig', `${rig.length} of them`, `at most ${MOST_RIGS}`);
  for (const [name, given] of Object.entries({ trip, part })) {
    if (given !== undefined && given.length > 1) return refuse(`--${name}`, `${given.length} of them`, 'one');
  }
  const chosen = part?.[0];
  return {
    ok: true,
    value: {
      route,
      supplies: supply,
      rigs: rig,
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
