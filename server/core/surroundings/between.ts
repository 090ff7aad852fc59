import type { LonLat } from '../geodesy/lon-lat.ts';
import { unwrapLongitude } from '../geodesy/longitude.ts';
import type { Surrounding, SurroundingKind, Surroundings } from '../input/sources.ts';
import { numberAt } from '../lists/at.ts';
import type { BarrierKind } from '../phrases/said/barriers.ts';
import { stretchesNear } from '../route/passings/stretches-near.ts';
import { viewpointAt } from '../route/passings/viewpoint.ts';
import { indexRoute, runsOf } from '../route/route-index.ts';
import type { RouteLine } from '../route/route-line.ts';
import { boxOfPlaces, LineIndex, type Piece } from './line-index.ts';
import { boxAround, crossingOf, toPieceM } from './plane.ts';

/** A crossing so near to where a straight detour meets a barrier makes it passable there, metres (ours). */
const CROSSING_NEAR_M = 300;

/** A barrier on the straight way between two places. */
export interface Barrier {
  readonly what: BarrierKind;
  readonly name: string | null;
}

/** What leads over each barrier; over a border and a coast nothing does but the route itself, or a bridge to an island. */
const CROSSED_BY: Record<BarrierKind, readonly SurroundingKind[]> = {
  river: ['road-across'],
  canal: ['road-across'],
  railway: ['level-crossing', 'road-across'],
  coast: ['road-across'],
  border: [],
};

const isBarrier = (what: SurroundingKind): what is BarrierKind => Object.hasOwn(CROSSED_BY, what);

/** Two places as a piece, on one turn of the globe. */
const straight = (from: LonLat, to: LonLat): [LonLat, LonLat] => [
  from,
  { lon: unwrapLongitude(to.lon, from.lon), lat: to.lat },
];

/** Tells what lies between a route and places beside it. */
export class Between {
  readonly #barriers: LineIndex;
  readonly #crossings: LineIndex;

  constructor({ objects }: Surroundings) {
    this.#barriers = new LineIndex(objects.filter(({ what }) => isBarrier(what)));
    const isCrossing = ({ what }: Surrounding) => what === 'road-across' || what === 'level-crossing';
    this.#crossings = new LineIndex(objects.filter(isCrossing));
  }

  /**
   * The barriers that the straight line from a place of the route crosses where no way across is mapped near; each kind
   * once, with the first of its names by the alphabet. A border bears the names of whole countries, which say nothing.
   */
  barriers(route: RouteLine, place: LonLat, supply: LonLat): Barrier[] {
    const [from, to] = straight(place, supply);
    const found = new Map<BarrierKind, string | null>();
    for (const piece of this.#barriers.piecesIn(boxOfPlaces([from, to]))) {
      const { what, name } = piece.of;
      const meeting = crossingOf(from, to, piece.from, piece.to);
      if (meeting === null || !isBarrier(what) || this.#isCrossedNear(route, meeting, what)) continue;
      const known = found.get(what) ?? null;
      found.set(what, what === 'border' ? null : firstOf(known, name));
    }
    return [...found].map(([what, name]) => ({ what, name }));
  }

  #isCrossedNear(route: RouteLine, meeting: LonLat, what: BarrierKind): boolean {
    const box = boxAround(meeting, CROSSING_NEAR_M);
    const barrier = [...this.#barriers.piecesIn(box)].filter(
      ({ of, from, to }) => of.what === what && toPieceM(meeting, from, to) <= CROSSING_NEAR_M,
    );
    for (const crossing of this.#crossings.piecesIn(box)) {
      const { from, to, of } = crossing;
      if (!CROSSED_BY[what].includes(of.what) || toPieceM(meeting, from, to) > CROSSING_NEAR_M) continue;
      if (of.what === 'level-crossing' || leadsOver(crossing, barrier)) return true;
    }
    return routeLeadsOver(route, meeting, barrier);
  }
}

/** The route is a way that is driven: where it crosses itself, one can. */
function routeLeadsOver(route: RouteLine, meeting: LonLat, barrier: readonly Piece[]): boolean {
  const index = indexRoute(route);
  const { lon, lat, unsought } = route;
  for (const { firstStep, endStep } of runsOf(
    index,
    stretchesNear(index, viewpointAt(meeting), CROSSING_NEAR_M),
  ))
    for (let step = firstStep; step < endStep; step += 1) {
      if (unsought[step] === 1) continue;
      const vertex = (at: number): LonLat => ({
        lon: unwrapLongitude(numberAt(lon, at), meeting.lon),
        lat: numberAt(lat, at),
      });
      const [from, to] = [vertex(step), vertex(step + 1)];
      if (toPieceM(meeting, from, to) <= CROSSING_NEAR_M && leadsOver({ from, to }, barrier)) return true;
    }
  return false;
}

const firstOf = (a: string | null, b: string | null): string | null =>
  a === null || b === null ? (a ?? b) : a < b ? a : b;

const leadsOver = ({ from, to }: Pick<Piece, 'from' | 'to'>, barrier: readonly Piece[]): boolean =>
  barrier.some((piece) => crossingOf(from, to, piece.from, piece.to) !== null);
