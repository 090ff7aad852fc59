import type { LonLat } from '../geodesy/lon-lat.ts';
import { unwrapLongitude } from '../geodesy/longitude.ts';
import type { Surroundings } from '../input/sources.ts';
import type { Direction, NearPlace } from '../phrases/notes.ts';
import { placesOf } from './line-index.ts';
import { metresPerDegree } from './plane.ts';

/** A place farther off than this says nothing of where something is, metres (ours). */
const FARTHEST_M = 20_000;

const DIRECTIONS: readonly Direction[] = ['n', 'ne', 'e', 'se', 's', 'sw', 'w', 'nw'];

interface Settlement extends LonLat {
  readonly name: string;
}

/** A trip is analysed at every keystroke; its ground stays. */
const known = new WeakMap<Surroundings, readonly Settlement[]>();

function settlementsOf(surroundings: Surroundings): readonly Settlement[] {
  const settlements =
    known.get(surroundings) ??
    surroundings.objects.flatMap(({ what, name, lines: [line] }) =>
      what !== 'settlement' || name === null || line === undefined
        ? []
        : placesOf(line).map((place) => ({ ...place, name })),
    );
  known.set(surroundings, settlements);
  return settlements;
}

/**
 * The nearest named town, village or hamlet, how far it is in a straight line, and in which direction a place lies as
 * seen from there; null where none is known within 20 km. On a plane: some metres of error at that distance.
 */
export function nearestSettlement(surroundings: Surroundings | undefined, place: LonLat): NearPlace | null {
  if (surroundings === undefined) return null;
  const { east, north } = metresPerDegree(place.lat);
  let nearest: NearPlace | null = null;
  for (const { name, lon, lat } of settlementsOf(surroundings)) {
    const eastM = (unwrapLongitude(place.lon, lon) - lon) * east;
    const northM = (place.lat - lat) * north;
    const offM = Math.hypot(eastM, northM);
    if (offM > (nearest?.offM ?? FARTHEST_M)) continue;
    nearest = { name, offM, direction: directionOf(eastM, northM) };
  }
  return nearest;
}

/** Of the eight directions of the compass. */
function directionOf(eastM: number, northM: number): Direction {
  const eighths = Math.round(Math.atan2(eastM, northM) / (Math.PI / 4));
  return DIRECTIONS[(eighths + 8) % 8] ?? 'n';
}
