import { type CellSet, cellOf } from '../../../core/route/cover/road-cells.ts';
import { type LatLon, liesOnEarth } from '../extract/position.ts';
import type { RawElement } from '../extract/raw-element.ts';

/** The nodes of a file within reach of the route, by their ids. */
export class NearPlaces {
  readonly #reach: CellSet;
  readonly #places = new Map<number, LatLon>();

  constructor(reach: CellSet) {
    this.#reach = reach;
  }

  /** Takes a node; whether it lies within reach. */
  take(node: RawElement): boolean {
    if (!liesOnEarth(node) || !this.#reach.has(cellOf(node.lon, node.lat))) return false;
    this.#places.set(node.id, { lon: node.lon, lat: node.lat });
    return true;
  }

  get(id: number): LatLon | undefined {
    return this.#places.get(id);
  }

  has(id: number): boolean {
    return this.#places.has(id);
  }
}
