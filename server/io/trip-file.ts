import { checkTripValue } from '../app/input/plan-input.ts';
import type { RigFile } from '../contract/rig.ts';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome } from '../core/input/problem.ts';
import { withBoundaries } from './boundary-file.ts';
import { readYamlFile, withLine } from './yaml-file.ts';
import { parseYaml } from './yaml-text.ts';

/** Reads a trip file, YAML or JSON, and holds it against its rig. */
export async function readTripFile(path: string, rig: RigFile | null): Promise<Outcome<TripFile>> {
  const parsed = await readYamlFile(path, 'a trip file (YAML or JSON)');
  if (!parsed.ok) return parsed;
  const trip = withLine(checkTripValue(parsed.value.value, path, rig), parsed.value.lineOf);
  return trip.ok ? withBoundaries(trip.value, path) : trip;
}

/** A trip from text that came with a request; places are key paths alone. */
export function parseTrip(text: string, source: string, rig: RigFile | null): Outcome<TripFile> {
  const parsed = parseYaml(text, source);
  return parsed.ok ? checkTripValue(parsed.value.value, source, rig) : parsed;
}
