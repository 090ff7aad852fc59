import { fileURLToPath } from 'node:url';
import type { RigAndTrip } from '../app/input/plan-input.ts';
import type { Outcome } from '../core/input/problem.ts';
import { readRigFile } from './rig-file.ts';
import { readTripFile } from './trip-file.ts';

/** Orrimar is an invented land: nobody may take its wells for real ones. */
export const DEMO_NOTICE = 'Orrimar is invented. Do not drive by it.';

/** The demo's files in the checkout. */
const demoFile = (name: string) => ({
  path: fileURLToPath(new URL(`../../fixtures/orrimar/${name}`, import.meta.url)),
  source: name,
});
export const DEMO_ROUTE = demoFile('route.gpx');
export const DEMO_EXTRACT = demoFile('orrimar.osm.pbf');

/** The demo's rig and trip. */
export async function readDemoPlan(): Promise<Outcome<RigAndTrip>> {
  const rig = await readRigFile(demoFile('rig.yaml').path);
  if (!rig.ok) return rig;
  const trip = await readTripFile(demoFile('trip.yaml').path, rig.value);
  return trip.ok ? { ok: true, value: { rig: rig.value, trip: trip.value } } : trip;
}
