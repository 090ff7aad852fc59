import { at } from '../../../../core/lists/at.ts';
import type { FarList } from '../../extract/far-objects.ts';
import type { RawElement, RawNode } from '../../extract/raw-element.ts';

/** Wanted nodes off the land that is near, as reading threads pass them on: id, longitude, latitude, version, time of each. */
export type PackedFar = number[];
const FIELDS = 5;

/** Adds a node to the pack. */
export function packFar(pack: PackedFar, { id, lon, lat, version, timestamp }: RawNode): void {
  const time = timestamp === undefined ? Number.NaN : Date.parse(timestamp);
  pack.push(id, lon, lat, version ?? Number.NaN, time);
}

/** The far nodes of a file, in its order. */
export class FarNodes {
  #pack: number[] = [];
  /** For each of them: how many wanted elements had been kept when its block came. */
  #keptBefore: number[] = [];

  take(pack: PackedFar, keptBefore: number): void {
    for (const value of pack) this.#pack.push(value);
    for (let first = 0; first < pack.length; first += FIELDS) this.#keptBefore.push(keptBefore);
  }

  /** The node in a place of the list; NaN for a version or time (milliseconds) that is not known. */
  #node(place: number) {
    const first = place * FIELDS;
    return {
      id: at(this.#pack, first),
      lon: at(this.#pack, first + 1),
      lat: at(this.#pack, first + 2),
      version: at(this.#pack, first + 3),
      timeMs: at(this.#pack, first + 4),
    };
  }

  /**
   * Leaves the newest version of each node that the file holds more than once, of equal versions the later one. `near`
   * are the wanted elements that were kept; gives them without the nodes that have moved away since.
   */
  settle(near: readonly RawElement[]): RawElement[] {
    /** `order`: in the file; `place`: among the far ones, -1 for one that is near. */
    const newest = new Map<number, { version: number; order: number; place: number }>();
    const offer = (id: number, version: number, order: number, place: number): void => {
      const rival = newest.get(id);
      const isOlder = rival !== undefined && (version - rival.version || order - rival.order) < 0;
      if (!isOlder) newest.set(id, { version, order, place });
    };
    this.#keptBefore.forEach((order, place) => {
      const { id, version } = this.#node(place);
      offer(id, version || 0, order - 0.5, place);
    });
    near.forEach(({ type, id, version = 0 }, order) => {
      if (type === 'node' && newest.has(id)) offer(id, version, order, -1);
    });
    const rest = [...newest.values()].filter(({ place }) => place >= 0);
    this.#pack = rest.flatMap(({ place }) => this.#pack.slice(place * FIELDS, (place + 1) * FIELDS));
    this.#keptBefore = rest.map(({ order }) => order + 0.5);
    return near.filter(({ type, id }) => type !== 'node' || (newest.get(id)?.place ?? -1) < 0);
  }

  addTo(list: FarList): void {
    for (let place = 0; place < this.#keptBefore.length; place += 1) {
      const { id, lon, lat, version, timeMs } = this.#node(place);
      list.addTimed({ type: 'node', id, version, timeMs }, [lon, lat, lon, lat]);
    }
  }
}
