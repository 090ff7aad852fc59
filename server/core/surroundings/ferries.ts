import type { LonLat } from '../geodesy/lon-lat.ts';
import { stepM } from '../geodesy/step.ts';
import type { Surrounding, Surroundings } from '../input/sources.ts';
import { pairsOf } from '../lists/pairs.ts';
import type { Ferry } from '../route/ferry.ts';
import { positionAt } from '../route/passings/locate.ts';
import { findPassings } from '../route/passings/passings.ts';
import type { RouteLine } from '../route/route-line.ts';
import { LineIndex, placesOf } from './line-index.ts';
import { boxAround, toPieceM } from './plane.ts';
import { RoadMap } from './road-marks.ts';

/** A ferry whose hours nobody mapped goes so fast, km/h (ours: slower than most, as water is used by the time). */
export const FERRY_KM_PER_HOUR = 10;
/** Hours that nobody mapped are no finer than this, rounded up. */
const TENTHS = 10;
/** No ferry for vehicles is faster: a `duration` that says so is not believed, km/h (ours). */
const FASTEST_KM_PER_HOUR = 80;
/** The route follows a line within this share of its length, at least and at most so many metres (ours). */
const APART = { share: 0.05, leastM: 100, mostM: 1_000 };
/** The stretch of route is at least and at most so many times as long as the line (ours). */
const STRETCH = { least: 0.8, most: 1.25 };
/** Places looked at along a stretch. */
const SAMPLES = 60;
/** Shorter lines are landing stages, metres. */
const SHORTEST_M = 50;

/** A mapped ferry line as it is measured. */
interface FerryLine {
  readonly of: Surrounding;
  readonly places: readonly LonLat[];
  readonly lengthM: number;
  /** How far from it the route may be. */
  readonly apartM: number;
}

function lineOf(of: Surrounding, line: Float64Array): FerryLine {
  const places = placesOf(line);
  const lengthM = pairsOf(places).reduce((sum, [a, b]) => sum + stepM(a.lon, a.lat, b.lon, b.lat), 0);
  const apartM = Math.min(APART.mostM, Math.max(APART.leastM, APART.share * lengthM));
  return { of, places, lengthM, apartM };
}

const toLineM = (place: LonLat, { places }: FerryLine): number =>
  Math.min(...pairsOf(places).map(([from, to]) => toPieceM(place, from, to)));

const alongRoute = (route: RouteLine, fromM: number, toM: number): LonLat[] =>
  Array.from({ length: SAMPLES + 1 }, (_, index) =>
    positionAt(route, fromM + (index / SAMPLES) * (toM - fromM)),
  );

/** The stretches on which the route follows a line from near its one end to near the other. */
function stretchesOn(route: RouteLine, line: FerryLine): { fromM: number; toM: number }[] {
  const [first, last] = [line.places[0], line.places.at(-1)];
  if (first === undefined || last === undefined || line.lengthM < SHORTEST_M) return [];
  const ends = findPassings(route, [first, last], line.apartM);
  return ends.flatMap((one, index) => {
    // Ends stand in route order: the next that is the other end.
    const other = ends.slice(index + 1).find(({ point }) => point !== one.point);
    if (other === undefined) return [];
    const share = (other.atM - one.atM) / line.lengthM;
    if (share < STRETCH.least || share > STRETCH.most) return [];
    const isOnLine = alongRoute(route, one.atM, other.atM).every(
      (place) => toLineM(place, line) <= line.apartM,
    );
    return isOnLine ? [{ fromM: one.atM, toM: other.atM }] : [];
  });
}

/** Tells whether a road goes there as well: a bridge or tunnel anywhere along it, or roads beside half of it. */
function roadsBeside({
  objects,
  roads,
}: Surroundings): (places: readonly LonLat[], apartM: number) => boolean {
  const bridges = new LineIndex(objects.filter(({ what }) => what === 'road-across'));
  const map = new RoadMap(roads);
  const isBridgeNear = (place: LonLat, apartM: number): boolean => {
    for (const { from, to } of bridges.piecesIn(boxAround(place, apartM)))
      if (toPieceM(place, from, to) <= apartM) return true;
    return false;
  };
  return (places, apartM) =>
    places.some((place) => isBridgeNear(place, apartM)) ||
    places.filter((place) => map.isRoadNear(place)).length > places.length / 2;
}

function hoursOf({ of, lengthM }: FerryLine): { hours: number; isMapped: boolean } {
  const km = lengthM / 1000;
  const { hours } = of;
  return hours !== undefined && hours > 0 && km / hours <= FASTEST_KM_PER_HOUR
    ? { hours, isMapped: true }
    : { hours: Math.ceil((km / FERRY_KM_PER_HOUR) * TENTHS) / TENTHS, isMapped: false };
}

/**
 * The stretches of a route that are ferry crossings, in route order: where it follows a mapped ferry line from end to end
 * and no road goes there as well. Of lines that overlap the slower is taken.
 */
export function ferriesOn(route: RouteLine, surroundings: Surroundings): Ferry[] {
  const lines = surroundings.objects.filter(({ what }) => what === 'ferry');
  // Where no extract shows roads nobody knows that none goes there: then the way is driven.
  if (lines.length === 0 || surroundings.roads.length === 0) return [];
  const isRoad = roadsBeside(surroundings);
  const found = lines
    .flatMap((of) => of.lines.map((line) => lineOf(of, line)))
    .flatMap((line) =>
      stretchesOn(route, line)
        .filter(({ fromM, toM }) => !isRoad(alongRoute(route, fromM, toM).slice(6, -6), line.apartM))
        .map((stretch): Ferry => ({ ...stretch, name: line.of.name, id: line.of.id, ...hoursOf(line) })),
    )
    .sort((a, b) => b.hours - a.hours || a.fromM - b.fromM);
  const taken: Ferry[] = [];
  for (const ferry of found)
    if (!taken.some(({ fromM, toM }) => fromM < ferry.toM && ferry.fromM < toM)) taken.push(ferry);
  return taken.sort((a, b) => a.fromM - b.fromM);
}
