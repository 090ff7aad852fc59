import { type ExportPack, packOf } from '../../../server/app/export/pack.ts';
import { planTrip } from '../../../server/app/plan-trip.ts';
import { loadFiles } from '../../../server/commands/load-files.ts';
import { readPlan } from '../../../server/commands/read-plan.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import { openingHours } from '../../../server/io/opening-hours.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { PLAN_SECONDS } from '../../helpers/patience.ts';
import { demoPath } from '../../http/form.ts';

const TODAY = '2026-11-30';

/** The demo's trip, planned, as files to take along are made from it; its trip changed where that is told. */
export async function demoPack(
  change: (trip: TripFile) => TripFile = (trip) => trip,
  { extras = false, cab = false } = {},
): Promise<ExportPack> {
  const supplies = [demoPath('orrimar.osm.pbf')];
  const args = {
    route: demoPath('route.gpx'),
    isKept: false,
    supplies,
    rigs: [],
    trip: null,
    part: null,
    json: false,
  };
  const quiet = { out: () => {}, err: () => {}, terminal: false };
  const loaded = await loadFiles(args, quiet);
  const plan = await readPlan(demoPath('rig.yaml'), demoPath('trip.yaml'), null);
  if (!loaded.ok || !plan.ok) throw new Error('the demo cannot be read');
  const asked = { rig: plan.value.rig, trip: change(plan.value.trip) };
  const calendar = { today: TODAY, openingHours };
  const options = { ...calendar, solver: await loadSolver(), seconds: PLAN_SECONDS, extras, cab };
  const planned = planTrip(loaded.value, asked, options);
  if (!planned.ok) throw new Error('the demo cannot be planned');
  const pack = packOf(loaded.value, planned.value, TODAY);
  if (!pack.ok) throw new Error('the demo has no route');
  return pack.value;
}
