import { loadTrip } from '../../server/app/load-trip.ts';
import type { LoadedTrip } from '../../server/app/loaded-trip.ts';
import { problemLine } from '../../server/core/input/problem.ts';
import { tripFileSet } from '../../server/io/trip-file-set.ts';
import { realPath } from '../helpers/real.ts';

/** The Swiss route with its fuel points, read. */
export async function loadSwiss(): Promise<LoadedTrip> {
  const file = (name: string) => ({ path: realPath(name), source: name });
  const loaded = await loadTrip(
    {
      route: file('routes/swiss-grand-tour.gpx'),
      extracts: [file('extracts/switzerland-fuel-2026.overpass.json')],
      withGround: false,
      notice: null,
    },
    tripFileSet,
  );
  if (!loaded.ok) throw new Error(problemLine(loaded.problem));
  return loaded.value;
}
