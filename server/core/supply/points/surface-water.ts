import type { LonLat } from '../../geodesy/lon-lat.ts';
import { wrapLongitude } from '../../geodesy/longitude.ts';
import type { Surrounding, Surroundings } from '../../input/sources.ts';
import { positionAt } from '../../route/passings/locate.ts';
import type { RouteLine } from '../../route/route-line.ts';
import { LineIndex } from '../../surroundings/line-index.ts';
import { boxAround, nearestOn } from '../../surroundings/plane.ts';
import type { SupplyFeature } from './supply-feature.ts';

/** Water farther from the route than this is left out, metres: one has to walk there with cans (ours). */
const WITHIN_M = 300;
/** The route is looked along by steps of this, metres (ours). */
const STEP_M = 250;
/** Of all the water along so much of the route only the nearest is told, metres: rivers run beside roads (ours). */
const ONE_IN_M = 10_000;
/** The bank is so much short of the line, metres (ours): going there crosses no water. */
const BANK_M = 2;

interface Sight extends LonLat {
  readonly of: Surrounding;
  /** Of the place of the route that it is seen from. */
  readonly atM: number;
  readonly offM: number;
}

const TAGS = { river: { waterway: 'river' }, lake: { natural: 'water' } } as const;

/**
 * Rivers and lakes with fresh water all year that the route comes by, as supplies that are doubtful and want treating: the
 * nearest of each ten kilometres.
 */
export function surfaceWater(route: RouteLine, { objects }: Surroundings): SupplyFeature[] {
  const waters = objects.filter(({ fresh }) => fresh === true);
  if (waters.length === 0) return [];
  const index = new LineIndex(waters);
  const nearest = new Map<number, Sight>();
  for (let atM = 0; atM <= route.lengthM; atM += STEP_M) {
    const stretch = Math.floor(atM / ONE_IN_M);
    const sight = seenFrom(positionAt(route, atM), atM, index);
    if (sight !== null && sight.offM < (nearest.get(stretch)?.offM ?? Infinity)) nearest.set(stretch, sight);
  }
  return apart([...nearest.values()]).map(featureOf);
}

/** Without those that are seen on both sides of where one stretch ends and the next begins: of two the nearer stays. */
function apart(sights: readonly Sight[]): Sight[] {
  const kept: Sight[] = [];
  for (const sight of sights) {
    const before = kept.at(-1);
    if (before === undefined || before.of !== sight.of || sight.atM - before.atM > ONE_IN_M / 2)
      kept.push(sight);
    else if (sight.offM < before.offM) kept[kept.length - 1] = sight;
  }
  return kept;
}

/** The nearest water from a place; null where there is none within reach. */
function seenFrom(place: LonLat, atM: number, index: LineIndex): Sight | null {
  let best: Sight | null = null;
  for (const { of, from, to } of index.piecesIn(boxAround(place, WITHIN_M))) {
    const there = nearestOn(place, from, to);
    if (there.offM > WITHIN_M || there.offM >= (best?.offM ?? Infinity)) continue;
    const share = there.offM <= BANK_M ? 0 : 1 - BANK_M / there.offM;
    const lon = place.lon + share * (there.lon - place.lon);
    best = { of, atM, lon, lat: place.lat + share * (there.lat - place.lat), offM: there.offM };
  }
  return best;
}

function featureOf({ of: { id, what, name }, lon, lat }: Sight): SupplyFeature {
  const surface = what === 'lake' ? 'lake' : 'river';
  return {
    id,
    alsoIds: [],
    lon: wrapLongitude(lon),
    lat,
    tags: { ...TAGS[surface], ...(name === null ? {} : { name }) },
    editedAt: null,
    wanted: ['water'],
    surface,
  };
}
