import { basename } from 'node:path';
import { gaugeLines } from '../app/text/gauge-text.ts';
import { planText } from '../app/text/plan-text.ts';
import { ProgressLine } from '../app/text/progress-line.ts';
import { whatIfLines } from '../app/text/whatif-text.ts';
import { today } from '../app/today.ts';
import type { Outcome } from '../core/input/problem.ts';
import { runCarry } from '../work/run-carry.ts';
import type { CommandIo } from './command-io.ts';
import { loadAsked, ofRoute, withAskedPart } from './load-asked.ts';
import { readPlan } from './read-plan.ts';
import { readTripArguments } from './trip-arguments.ts';

const HELP = `npm run -s drystage -- plan ROUTE.gpx --supply EXTRACT [--supply EXTRACT ...] --rig RIG.yaml [--trip TRIP.yaml] [--part PART] [--json]

Plans where to fill and how many full cans to carry over which stretch, so that the reserve is intact everywhere: on as
little weak evidence, with as few cans and with as little extra driving as can be. With none, says what breaks it and
what would help. Then what happens when something goes wrong, the list to telephone first, and the gauge table: the
least to have aboard every 50 km to go on and to go back.

  ROUTE.gpx, --supply, --rig, --trip, --part   as of gaps; the keys plan and whatIf of the trip set limits and choose
  --json                                       the whole analysis as JSON, with plan, whatIf and gauge beside it
  --help                                       this text

Exit status as of gaps.
`;

/** Runs `plan` with what stands after it on the command line: reads as gaps does, plans in a worker. */
export async function plan(args: readonly string[], io: CommandIo): Promise<Outcome<null>> {
  const read = readTripArguments('plan', args, 1);
  if (!read.ok) return read;
  const asked = read.value;
  if (asked === null) {
    io.out(HELP);
    return { ok: true, value: null };
  }
  const files = await readPlan(asked.rigs[0]!, asked.trip);
  if (!files.ok) return files;
  const loaded = await loadAsked(asked, io);
  if (!loaded.ok) return loaded;
  const trip = withAskedPart(files.value.trip, asked);
  const progress = io.terminal ? new ProgressLine(io.err, Date.now) : null;
  const shown = setInterval(() => progress?.showWork('planning'), 500);
  const outcome = ofRoute(
    await runCarry(loaded.value, {
      rig: files.value.rig,
      trip,
      today: today(),
      seconds: io.planSeconds,
    }).finally(() => {
      clearInterval(shown);
      progress?.clear();
    }),
    asked,
  );
  if (!outcome.ok) return outcome;
  const { analysis, plan: made, whatIf, gauge } = outcome.value;
  io.out(
    asked.json
      ? `${JSON.stringify({ ...analysis, plan: made, whatIf, gauge })}\n`
      : planText(analysis, made, basename(asked.route), [...whatIfLines(whatIf), ...gaugeLines(gauge)]),
  );
  return { ok: true, value: null };
}
