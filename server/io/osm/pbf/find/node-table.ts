import type { RawElement } from '../../extract/raw-element.ts';
import { lowerBound, PACKED_FIELDS } from './find.ts';

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

  /** Takes nodes as `findInBlock` packs them. */
  take(packed: Float64Array): void {
    for (let at = 0; at < packed.length; at += PACKED_FIELDS) {
      const place = lowerBound(this.#ids, packed[at]!);
      if (this.#ids[place] !== packed[at]) continue;
      const version = packed[at + 3]!;
      if ((version || 0) < (this.#versions[place]! || 0)) continue;
      this.#versions[place] = version;
      this.#lats[place] = packed[at + 1]!;
      this.#lons[place] = packed[at + 2]!;
    }
  }

  /** The node as an element; undefined when it is not there or has no position. */
  get(id: number): RawElement | undefined {
    const place = lowerBound(this.#ids, id);
    if (this.#ids[place] !== id || Number.isNaN(this.#lats[place])) return undefined;
    const node: RawElement = { type: 'node', id, lat: this.#lats[place]!, lon: this.#lons[place]! };
    const version = this.#versions[place]!;
    return Number.isNaN(version) ? node : { type: 'node', id, version, lat: node.lat!, lon: node.lon! };
  }
}
