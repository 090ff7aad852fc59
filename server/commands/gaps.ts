import { gapsTrip } from '../app/analyse-trip.ts';
import { reportText } from '../app/text/report-text.ts';
import { today } from '../app/today.ts';
import { openingHours } from '../io/opening-hours.ts';
import { dataFolder } from '../store/data-folder.ts';
import { tripCommand } from './command.ts';
import { jsonLine } from './json-line.ts';
import { ofRoute } from './load-files.ts';
import { readTrip } from './read-trip.ts';

export const GAPS_HELP = `npm run -s drystage -- gaps ROUTE.gpx --supply EXTRACT [--supply EXTRACT ...] --rig RIG.yaml [--trip TRIP.yaml] [--part PART] [--json]

Finds the fuel and water gaps of a route and says whether the vehicle gets over them with its reserve.

  ROUTE.gpx        the planned route: GPX 1.0 or 1.1 with tracks or routes; or the name of a kept trip, which has
                   its extracts, rig and trip (others may be given for rig and trip)
  --supply EXTRACT OpenStreetMap data: .osm.pbf, .osm (also .gz, .bz2), Overpass JSON, GeoJSON or GPX waypoints;
                   the content decides, not the name; or the name of a kept extract; may be given several times
  --rig RIG.yaml   the vehicle: tanks, use, reserves, pace (YAML or JSON)
  --trip TRIP.yaml this journey: what is aboard, how far on from the end, corridor (YAML or JSON)
  --part PART      number (from 1) or name of the one track or route to take; default: the trip's, else all
  --json           the whole analysis as JSON
  --help           this text

Further commands, each with a --help of its own:
  learn LOG.csv    what a log of fill-ups or of water teaches
  compare ROUTE    several rigs on one route
  plan ROUTE       where to fill and what to carry over which stretch
  extract add|fetch|list|remove   extracts that are kept for any number of routes
  trip list|export|import   trips that are kept
  notes list|export|import  what a kept trip notes of supplies and of the road
  backup FILE, restore FILE   all kept trips and rigs as one file, also while a server runs

All of it is kept in a data folder of yours, or the one that DRYSTAGE_DATA names: ${dataFolder()}

--version in place of a command prints the program's version.

Exit status: 0 when the analysis ran, whatever its verdicts; 2 when an input cannot be used, with one line that says
why on stderr; 1 when the program itself is at fault.
`;

/** The gaps of a route. */
export const gaps = tripCommand({
  name: 'gaps',
  help: GAPS_HELP,
  mostRigs: 1,
  run: async (args, io) => {
    const files = await readTrip(args, io);
    if (!files.ok) return files;
    const { loaded, rig, trip } = files.value;
    const outcome = ofRoute(gapsTrip(loaded, { rig, trip }, { today: today(), openingHours }), args);
    if (!outcome.ok) return outcome;
    const analysis = outcome.value;
    return { ok: true, value: args.json ? jsonLine(analysis) : reportText(analysis, loaded.notice) };
  },
});
