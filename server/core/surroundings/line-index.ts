import Flatbush from 'flatbush';
import type { LonLat } from '../geodesy/lon-lat.ts';
import { unwrapLongitude } from '../geodesy/longitude.ts';
import type { Surrounding } from '../input/sources.ts';
import { at, numberAt } from '../lists/at.ts';
import { pairsOf } from '../lists/pairs.ts';

/** A straight piece of a line; longitudes run on past 180 rather than jump. */
export interface Piece {
  readonly of: Surrounding;
  readonly from: LonLat;
  readonly to: LonLat;
}

/** West, south, east, north, degrees; east is never less than west. */
export type PlainBox = readonly [west: number, south: number, east: number, north: number];

/** So many pieces share a box: few enough that a search finds little beside, and many enough that there are few boxes. */
const PIECES_OF_A_RUN = 16;

/** Places `first` to `last` of a line. */
interface Run {
  readonly of: Surrounding;
  readonly line: Float64Array;
  readonly first: number;
  readonly last: number;
}

/** The places of a line of positions in turn, each within 180 degrees of the one before. */
export function placesOf(line: Float64Array, first = 0, last = line.length / 2 - 1): LonLat[] {
  const places: LonLat[] = [];
  let lon = numberAt(line, 2 * first);
  for (let place = first; place <= last; place += 1) {
    lon = unwrapLongitude(numberAt(line, 2 * place), lon);
    places.push({ lon, lat: numberAt(line, 2 * place + 1) });
  }
  return places;
}

export function boxOfPlaces(places: readonly LonLat[]): PlainBox {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { lon, lat } of places) {
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  return [west, south, east, north];
}

const runsOfLine = (of: Surrounding, line: Float64Array): Run[] => {
  const end = line.length / 2 - 1;
  const runs: Run[] = [];
  for (let first = 0; first < Math.max(1, end); first += PIECES_OF_A_RUN)
    runs.push({ of, line, first, last: Math.min(end, first + PIECES_OF_A_RUN) });
  return runs;
};

/** Lines of the ground, found by where they are. */
export class LineIndex {
  readonly #runs: readonly Run[];
  readonly #boxes: Flatbush | null;

  constructor(objects: readonly Surrounding[]) {
    this.#runs = objects.flatMap((of) => of.lines.flatMap((line) => runsOfLine(of, line)));
    this.#boxes = this.#runs.length === 0 ? null : new Flatbush(this.#runs.length);
    for (const { line, first, last } of this.#runs)
      this.#boxes?.add(...boxOfPlaces(placesOf(line, first, last)));
    this.#boxes?.finish();
  }

  /** The pieces whose runs touch a box, on whatever turn of the globe; a single place is a piece of no length. */
  *piecesIn([west, south, east, north]: PlainBox): Generator<Piece> {
    if (this.#boxes === null) return;
    for (const turn of [-360, 0, 360])
      for (const found of this.#boxes.search(west + turn, south, east + turn, north)) {
        const { of, line, first, last } = at(this.#runs, found);
        const places = placesOf(line, first, last);
        yield* piecesOf(
          of,
          places.map(({ lon, lat }) => ({ lon: lon - turn, lat })),
        );
      }
  }
}

function* piecesOf(of: Surrounding, places: readonly LonLat[]): Generator<Piece> {
  const [only] = places;
  if (places.length === 1 && only !== undefined) yield { of, from: only, to: only };
  for (const [from, to] of pairsOf(places)) yield { of, from, to };
}
