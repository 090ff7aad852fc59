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

interface Run {
  readonly of: Surrounding;
  readonly places: readonly LonLat[];
}

/** The places of a line of positions in turn, each within 180 degrees of the one before. */
export function placesOf(line: Float64Array): LonLat[] {
  const places: LonLat[] = [];
  let lon = numberAt(line, 0);
  for (let i = 0; i + 1 < line.length; i += 2) {
    lon = unwrapLongitude(numberAt(line, i), lon);
    places.push({ lon, lat: numberAt(line, i + 1) });
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

/** Lines of the ground, found by where they are. */
export class LineIndex {
  readonly #runs: Run[] = [];
  readonly #boxes: Flatbush | null;

  constructor(objects: readonly Surrounding[]) {
    for (const of of objects)
      for (const line of of.lines) {
        const places = placesOf(line);
        const last = Math.max(1, places.length - 1);
        for (let first = 0; first < last; first += PIECES_OF_A_RUN)
          this.#runs.push({ of, places: places.slice(first, first + PIECES_OF_A_RUN + 1) });
      }
    this.#boxes = this.#runs.length === 0 ? null : new Flatbush(this.#runs.length);
    for (const { places } of this.#runs) this.#boxes?.add(...boxOfPlaces(places));
    this.#boxes?.finish();
  }

  /** The pieces whose runs touch a box, on whatever turn of the globe; a single place is a piece of no length. */
  *piecesIn([west, south, east, north]: PlainBox): Generator<Piece> {
    if (this.#boxes === null) return;
    for (const turn of [-360, 0, 360])
      for (const found of this.#boxes.search(west + turn, south, east + turn, north)) {
        const { of, places } = at(this.#runs, found);
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
