import Flatbush from 'flatbush';
import type { LonLat } from '../geodesy/lon-lat.ts';
import { unwrapLongitude } from '../geodesy/longitude.ts';
import type { Surrounding, SurroundingKind, Surroundings } from '../input/sources.ts';
import { at } from '../lists/at.ts';
import { pairsOf } from '../lists/pairs.ts';
import type { ClosedLand } from '../phrases/said/barriers.ts';
import { boxOfPlaces, placesOf } from './line-index.ts';

const CLOSED_LANDS: Record<ClosedLand, true> = { military: true, prison: true, airfield: true, closed: true };
const isClosedLand = (what: SurroundingKind): what is ClosedLand => Object.hasOwn(CLOSED_LANDS, what);

/** Land that is not open to everybody, and the object that it is mapped as. */
export interface ClosedGround {
  readonly what: ClosedLand;
  readonly id: string;
  readonly name: string | null;
}

interface Area extends ClosedGround {
  readonly rings: readonly LonLat[][];
}

function areasOf(objects: readonly Surrounding[]): Area[] {
  return objects.flatMap(({ what, id, name, lines }) =>
    isClosedLand(what) && lines.length > 0
      ? [{ what, id, name, rings: lines.map((line) => placesOf(line)) }]
      : [],
  );
}

/** Whether a place lies inside rings, holes among them: a parallel to the east crosses their sides an odd number of times. */
function holds({ rings }: Area, { lon, lat }: LonLat): boolean {
  let isInside = false;
  for (const ring of rings)
    for (const [a, b] of pairsOf(ring)) {
      if (a.lat <= lat === b.lat <= lat) continue;
      const crossing = a.lon + ((lat - a.lat) / (b.lat - a.lat)) * (b.lon - a.lon);
      if (crossing > unwrapLongitude(lon, a.lon)) isInside = !isInside;
    }
  return isInside;
}

/** Tells on what closed ground a place lies. */
export class Enclosing {
  readonly #areas: readonly Area[];
  readonly #boxes: Flatbush | null;

  constructor({ objects }: Surroundings) {
    this.#areas = areasOf(objects);
    this.#boxes = this.#areas.length === 0 ? null : new Flatbush(this.#areas.length);
    for (const { rings } of this.#areas) this.#boxes?.add(...boxOfPlaces(rings.flat()));
    this.#boxes?.finish();
  }

  /** The closed grounds that hold a place, those with one of the ids left out, in the order of their ids. */
  around({ lon, lat }: LonLat, but: readonly string[]): ClosedGround[] {
    const boxes = this.#boxes;
    if (boxes === null) return [];
    const found = new Set([-360, 0, 360].flatMap((turn) => boxes.search(lon + turn, lat, lon + turn, lat)));
    return [...found]
      .map((index) => at(this.#areas, index))
      .filter((area) => !but.includes(area.id) && holds(area, { lon, lat }))
      .map(({ what, id, name }) => ({ what, id, name }))
      .sort((a, b) => (a.id < b.id ? -1 : Number(a.id > b.id)));
  }
}
