import type { RigFile } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { type Json, valueAt, withValueAt } from './json-path.ts';

/** Rig and trip as the user said them: no default is filled in, so that it stays marked as ours. */
export interface Said {
  rig: RigFile;
  trip: TripFile;
}

/** Ranges that a file may give as one number: their outer ends are then assumed from it. */
const RANGES = ['/fuel/litresPer100Km', '/water/litresPerDay', '/pace/kmPerHour'];

export const asJson = (value: RigFile | TripFile): Json => value as unknown as Json;
export const asRig = (value: Json): RigFile => value as unknown as RigFile;
export const asTrip = (value: Json): TripFile => value as unknown as TripFile;

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
  if (value === undefined) return withoutValueAt(said, path);
  const keys = path.split('/').slice(1, -1);
  const parents = keys.map((_, index) => `/${keys.slice(0, index + 1).join('/')}`);
  const untold = parents.find((parent) => valueAt(said, parent) === undefined);
  const holder = untold === undefined ? undefined : valueAt(settled, untold);
  if (untold === undefined || holder === undefined) return withValueAt(said, path, value);
  return withValueAt(withValueAt(said, untold, holder), path, value);
}

/** Takes a value out, and the groups that held nothing else: an empty group would look like something told. */
function withoutValueAt(said: Json, path: string): Json {
  const left = withValueAt(said, path, undefined);
  const parent = path.slice(0, path.lastIndexOf('/'));
  const inList = Array.isArray(valueAt(said, parent.slice(0, Math.max(0, parent.lastIndexOf('/')))));
  const held = valueAt(left, parent);
  const empty =
    typeof held === 'object' && held !== null && !Array.isArray(held) && Object.keys(held).length === 0;
  return parent !== '' && empty && !inList ? withoutValueAt(left, parent) : left;
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
