import { analyseTrip } from '../app/analyse-trip.ts';
import { reportText } from '../app/text/report-text.ts';
import { today } from '../app/today.ts';
import type { Outcome } from '../core/input/problem.ts';
import { openingHours } from '../io/opening-hours.ts';
import type { CommandIo } from './command-io.ts';
import { loadAsked, ofRoute, withAskedPart } from './load-asked.ts';
import { readPlan } from './read-plan.ts';
import { readTripArguments } from './trip-arguments.ts';

export const GAPS_HELP = `npm run -s drystage -- gaps ROUTE.gpx --supply EXTRACT [--supply EXTRACT ...] --rig RIG.yaml [--trip TRIP.yaml] [--part PART] [--json]

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

--version in place of a command prints the program's version.

Exit status: 0 when the analysis ran, whatever its verdicts; 2 when an input cannot be used, with one line that says
why on stderr; 1 when the program itself is at fault.
`;

/** Runs `gaps` with what stands after it on the command line. */
export async function gaps(args: readonly string[], io: CommandIo): Promise<Outcome<null>> {
  const read = readTripArguments('gaps', args, 1);
  if (!read.ok) return read;
  const asked = read.value;
  if (asked === null) {
    io.out(GAPS_HELP);
    return { ok: true, value: null };
  }
  const plan = await readPlan(asked.rigs[0]!, asked.trip);
  if (!plan.ok) return plan;
  const loaded = await loadAsked(asked, io);
  if (!loaded.ok) return loaded;
  const trip = withAskedPart(plan.value.trip, asked);
  const outcome = ofRoute(analyseTrip(loaded.value, plan.value.rig, trip, today(), openingHours), asked);
  if (!outcome.ok) return outcome;
  const { analysis } = outcome.value;
  io.out(asked.json ? `${JSON.stringify(analysis)}\n` : reportText(analysis, loaded.value.notice));
  return { ok: true, value: null };
}
