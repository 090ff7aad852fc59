import type { Analysis } from '../../server/contract/analysis.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { type Json, valueAt, withValueAt } from '../json-path.ts';

/** Rig and trip as the user said them: what was only assumed is left out, so that it stays marked as ours. */
export interface Said {
  rig: RigFile;
  trip: TripFile;
}

/** Ranges that a file may give as one number: their outer ends are then assumed from it. */
const RANGES = ['/fuel/litresPer100Km', '/water/litresPerDay', '/pace/kmPerHour'];

export const asJson = (value: RigFile | TripFile): Json => value as unknown as Json;
export const asRig = (value: Json): RigFile => value as unknown as RigFile;
export const asTrip = (value: Json): TripFile => value as unknown as TripFile;

/** True when the path belongs to the rig's file, not to the trip's. */
export const isRigPath = (path: string): boolean =>
  /^\/(fuel|water|pace|equipment|treatment|vehicle)(\/|$)/.test(path);

/** Takes the assumed values out of the settled rig and trip; an assumption's path starts with the file it is of. */
export function saidIn(analysis: Analysis): Said {
  const files = { rig: asJson(analysis.rig), trip: asJson(analysis.trip) };
  for (const assumption of analysis.assumptions) {
    const { in: file, path } = assumedAt(assumption.path);
    const range = RANGES.find((each) => path.startsWith(`${each}/`));
    if (file === 'rig' && range !== undefined) {
      const typical = valueAt(files.rig, `${range}/typical`);
      if (typical !== undefined) files.rig = withValueAt(files.rig, range, typical);
    } else if (valueAt(files[file], path) !== undefined) {
      files[file] = withValueAt(files[file], path, undefined);
    }
  }
  return { rig: asRig(files.rig), trip: asTrip(files.trip) };
}

/** "/rig/fuel/cans" is "/fuel/cans" in the rig. */
export function assumedAt(path: string): { in: 'rig' | 'trip'; path: string } {
  const [, file, ...rest] = path.split('/');
  return { in: file === 'rig' ? 'rig' : 'trip', path: `/${rest.join('/')}` };
}

/**
 * The file after the user set one value. Where the file lacks the object that holds it (cans, a reserve, the ends of
 * a range), the settled values stand beside the new one, so that the file stays whole.
 */
export function afterEdit(said: Json, settled: Json, path: string, value: Json | undefined): Json {
  const range = RANGES.find((each) => path.startsWith(`${each}/`));
  if (range !== undefined && typeof valueAt(said, range) === 'number') {
    if (path === `${range}/typical`) return withValueAt(said, range, value);
    const ends = valueAt(settled, range);
    return withValueAt(withValueAt(said, range, ends), path, value);
  }
  const parent = path.slice(0, path.lastIndexOf('/'));
  const holder = parent === '' ? undefined : valueAt(settled, parent);
  if (parent !== '' && valueAt(said, parent) === undefined && holder !== undefined) {
    return withValueAt(withValueAt(said, parent, holder), path, value);
  }
  return withValueAt(said, path, value);
}

/** Settings of a trip that hold on any route. */
const GENERAL = [
  'corridorKm',
  'counting',
  'allowancePercent',
  'detourFactor',
  'sparseStepKm',
  'campDays',
] as const;

/**
 * A trip for another route. Places and days of the old journey would be wrong there and could make a gap look better
 * than it is, so only the settings that hold anywhere stay; of a demo only those that the user changed in it.
 */
export function tripForAnotherRoute(trip: TripFile, demo: TripFile | null): TripFile {
  const kept = GENERAL.filter(
    (key) => trip[key] !== undefined && JSON.stringify(trip[key]) !== JSON.stringify(demo?.[key]),
  );
  return Object.fromEntries(kept.map((key) => [key, trip[key]]));
}
