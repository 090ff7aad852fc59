import { basename } from 'node:path';
import { loadTrip } from '../app/load-trip.ts';
import { gaugeLines } from '../app/text/gauge-text.ts';
import { planText } from '../app/text/plan-text.ts';
import { ProgressLine } from '../app/text/progress-line.ts';
import { whatIfLines } from '../app/text/whatif-text.ts';
import { today } from '../app/today.ts';
import type { CommandIo, GapsArguments } from '../command.ts';
import type { Outcome } from '../core/problem.ts';
import { tripFileSet } from '../io/trip-file-set.ts';
import { runCarry } from '../work/run-carry.ts';
import { readPlan } from './read-plan.ts';

export const PLAN_HELP = `npm run -s drystage -- plan ROUTE.gpx --supply EXTRACT [--supply EXTRACT ...] --rig RIG.yaml [--trip TRIP.yaml] [--part PART] [--json]

Plans where to fill and how many full cans to carry over which stretch, so that the reserve is intact everywhere: on as
little weak evidence, with as few cans and with as little extra driving as can be. With none, says what breaks it and
what would help. Then what happens when something goes wrong, the list to telephone first, and the gauge table: the
least to have aboard every 50 km to go on and to go back.

  ROUTE.gpx, --supply, --rig, --trip, --part   as of gaps; the keys plan and whatIf of the trip set limits and choose
  --json                                       the whole analysis as JSON, with plan, whatIf and gauge beside it
  --help                                       this text

Exit status as of gaps.
`;

/** Runs `plan`: reads as gaps does, plans in a worker. */
export async function plan(asked: GapsArguments, io: CommandIo): Promise<Outcome<null>> {
  const read = await readPlan(asked.rig, asked.trip);
  if (!read.ok) return read;
  const { rig } = read.value;
  const trip = asked.part === null ? read.value.trip : { ...read.value.trip, part: asked.part };
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
  const outcome = await runCarry(loaded.value, rig, trip, today());
  if (!outcome.ok) {
    return { ok: false, problem: { ...outcome.problem, source: outcome.problem.source ?? asked.route } };
  }
  const { analysis, plan: made, whatIf, gauge } = outcome.value;
  io.out(
    asked.json
      ? `${JSON.stringify({ ...analysis, plan: made, whatIf, gauge })}\n`
      : planText(analysis, made, basename(asked.route), [...whatIfLines(whatIf), ...gaugeLines(gauge)]),
  );
  return { ok: true, value: null };
}
