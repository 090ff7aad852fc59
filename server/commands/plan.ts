import { basename } from 'node:path';
import type { PlannedTrip } from '../app/plan-trip.ts';
import { ProgressLine } from '../app/text/lines/progress-line.ts';
import { gaugeLines } from '../app/text/plan/gauge-text.ts';
import { planText } from '../app/text/plan/plan-text.ts';
import { whatIfLines } from '../app/text/plan/whatif-text.ts';
import { today } from '../app/today.ts';
import type { Outcome } from '../core/input/problem.ts';
import { runCarry } from '../work/run-carry.ts';
import { tripCommand } from './command.ts';
import type { CommandIo } from './command-io.ts';
import { jsonLine } from './json-line.ts';
import { ofRoute } from './load-files.ts';
import { type ReadTrip, readTrip } from './read-trip.ts';

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

/** The carry plan of a route, made in a worker. */
export const plan = tripCommand({
  name: 'plan',
  help: HELP,
  mostRigs: 1,
  run: async (args, io) => {
    const files = await readTrip(args, io);
    if (!files.ok) return files;
    const outcome = ofRoute(await planBeforeTerminal(files.value, io), args);
    if (!outcome.ok) return outcome;
    const { analysis, plan, whatIf, gauge } = outcome.value;
    if (args.json) return { ok: true, value: jsonLine({ ...analysis, plan, whatIf, gauge }) };
    const follows = [...whatIfLines(whatIf), ...gaugeLines(gauge)];
    return { ok: true, value: planText(analysis, plan, basename(args.route), follows) };
  },
});

/** Plans, and says before a terminal how long that has gone on. */
export async function planBeforeTerminal(
  { loaded, rig, trip }: ReadTrip,
  io: CommandIo,
  { cab = false }: { cab?: boolean } = {},
): Promise<Outcome<PlannedTrip>> {
  const progress = io.terminal ? new ProgressLine(io.err, Date.now) : null;
  const timer = setInterval(() => progress?.showWork('planning'), 500);
  try {
    return await runCarry(loaded, { rig, trip, today: today(), seconds: io.planSeconds, cab });
  } finally {
    clearInterval(timer);
    progress?.clear();
  }
}
