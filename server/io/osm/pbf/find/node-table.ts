import { numberAt } from '../../../../core/lists/at.ts';
import { lowerBound } from '../../../lists/lower-bound.ts';
import type { RawNode } from '../../extract/raw-element.ts';
import { numbersOf, type PackedNodes } from './packed-nodes.ts';

/** The ids in ascending order, each once. Sorts the list that it is given. */
export function ascendingOnce(ids: Float64Array): Float64Array {
  ids.sort();
  let length = 0;
  for (const id of ids) {
    if (length > 0 && ids[length - 1] === id) continue;
    ids[length] = id;
    length += 1;
  }
  return ids.slice(0, length);
}

/**
 * Positions of many nodes at 32 bytes each, in the newest version that the file has, of equal versions the one that
 * comes last; a node that is deleted there or off the Earth has none.
 */
export class NodeTable {
  readonly #ids: Float64Array;
  readonly #lats: Float64Array;
  readonly #lons: Float64Array;
  /** NaN where the file gives none; -1 until the node is found. */
  readonly #versions: Float64Array;

  /** `ids` ascending, each once. */
  constructor(ids: Float64Array) {
    this.#ids = ids;
    this.#lats = new Float64Array(ids.length).fill(Number.NaN);
    this.#lons = new Float64Array(ids.length).fill(Number.NaN);
    this.#versions = new Float64Array(ids.length).fill(-1);
  }

  take(pack: PackedNodes): void {
    for (const { id, lat, lon, version } of numbersOf(pack)) {
      const place = lowerBound(this.#ids, id);
      if (this.#ids[place] !== id) continue;
      if ((version || 0) < (numberAt(this.#versions, place) || 0)) continue;
      this.#versions[place] = version;
      this.#lats[place] = lat;
      this.#lons[place] = lon;
    }
  }

  /** The node as an element; undefined when it is not there or has no position. */
  get(id: number): RawNode | undefined {
    const place = lowerBound(this.#ids, id);
    if (this.#ids[place] !== id) return undefined;
    const lat = numberAt(this.#lats, place);
    if (Number.isNaN(lat)) return undefined;
    const lon = numberAt(this.#lons, place);
    const version = numberAt(this.#versions, place);
    return Number.isNaN(version) ? { type: 'node', id, lat, lon } : { type: 'node', id, version, lat, lon };
  }
}
