import { analyseTrip } from '../app/analyse-trip.ts';
import { loadTrip } from '../app/load-trip.ts';
import type { NamedFile } from '../app/ports.ts';
import { type Outcome, refused } from '../core/input/problem.ts';
import { readSmallFile, utf8Text } from '../io/small-file.ts';
import { KeepingFileSet } from '../store/maps/keeping-file-set.ts';
import { unpackMaps } from '../store/maps/trip-maps.ts';
import { readTripFile, type TripFromFile } from '../store/trip-file/read-trip-file.ts';

/** A trip's file at most: what lies near a route is some megabytes; a text of half a gigabyte cannot be had. Ours. */
const MOST_BYTES = 300_000_000;

/** Any day: the file is tried, and nobody reads the answer. */
const SOME_DAY = '2026-01-01';

/** Opens a trip's file, and tries whether it can be reckoned with. */
export async function openTripFile({ path, source }: NamedFile): Promise<Outcome<TripFromFile>> {
  const bytes = await readSmallFile(path, { what: "a trip's file (.drystage.json)", mostBytes: MOST_BYTES });
  if (!bytes.ok) return { ok: false, problem: { ...bytes.problem, source } };
  const text = utf8Text(bytes.value);
  if (text === null) return unusable(source, 'bytes that are not UTF-8 text');
  const file = readTripFile(text, source);
  if (!file.ok) return file;
  try {
    const tried = await tryOut(file.value);
    return tried.ok ? file : tried;
  } catch {
    // The shape fits and what stands in it does not: somebody changed it by hand.
    return unusable(source, 'a map of the route that makes no sense');
  }
}

/** The route must be read; rig and trip may not fit it yet. */
async function tryOut({ route, maps, rig, trip, notice }: TripFromFile): Promise<Outcome<unknown>> {
  const files = new KeepingFileSet({ route: route.bytes, maps: unpackMaps(maps) });
  const named = { path: '', source: route.fileName };
  const loaded = await loadTrip({ route: named, extracts: [], withGround: true, notice }, files);
  if (loaded.ok) analyseTrip(loaded.value, { rig, trip }, { today: SOME_DAY });
  return loaded;
}

const unusable = (source: string, came: string): Outcome<never> =>
  refused({
    code: 'trip-file-invalid',
    source,
    came,
    expected: 'a trip that Drystage wrote (.drystage.json)',
    remedy: 'Export the trip again',
  });
