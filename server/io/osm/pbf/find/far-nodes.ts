import type { FarList } from '../../extract/far-objects.ts';
import type { RawElement } from '../../extract/raw-element.ts';

/** Wanted nodes off the land that is near, as reading threads pass them on: id, longitude, latitude, version, time of each. */
export type PackedFar = number[];
const FIELDS = 5;

/** Adds a node to the pack. */
export function packFar(pack: PackedFar, { id, lon, lat, version, timestamp }: RawElement): void {
  const time = timestamp === undefined ? Number.NaN : Date.parse(timestamp);
  pack.push(id, lon!, lat!, version ?? Number.NaN, time);
}

/** The far nodes of a file, in its order. */
export class FarNodes {
  #pack: number[] = [];
  /** For each of them: how many wanted elements had been kept when its block came. */
  #keptBefore: number[] = [];

  take(pack: PackedFar, keptBefore: number): void {
    for (const value of pack) this.#pack.push(value);
    for (let at = 0; at < pack.length; at += FIELDS) this.#keptBefore.push(keptBefore);
  }

  /**
   * Leaves the newest version of each node that the file holds more than once, of equal versions the later one. `kept`
   * are the wanted elements that were kept; gives them without the nodes that have moved away since.
   */
  settle(kept: readonly RawElement[]): RawElement[] {
    const newest = new Map<number, { version: number; at: number; far: number }>();
    const offer = (id: number, version: number, at: number, far: number): void => {
      const known = newest.get(id);
      const isOlder = known !== undefined && (version - known.version || at - known.at) < 0;
      if (!isOlder) newest.set(id, { version, at, far });
    };
    this.#keptBefore.forEach((at, far) => {
      offer(this.#pack[far * FIELDS]!, this.#pack[far * FIELDS + 3]! || 0, at - 0.5, far);
    });
    kept.forEach(({ type, id, version = 0 }, at) => {
      if (type === 'node' && newest.has(id)) offer(id, version, at, -1);
    });
    const left = [...newest.values()].filter(({ far }) => far >= 0);
    this.#pack = left.flatMap(({ far }) => this.#pack.slice(far * FIELDS, (far + 1) * FIELDS));
    this.#keptBefore = left.map(({ at }) => at + 0.5);
    return kept.filter(({ type, id }) => type !== 'node' || (newest.get(id)?.far ?? -1) < 0);
  }

  addTo(list: FarList): void {
    for (let at = 0; at < this.#pack.length; at += FIELDS) {
      const lon = this.#pack[at + 1]!;
      const lat = this.#pack[at + 2]!;
      list.addTimed('node', this.#pack[at]!, this.#pack[at + 3]!, this.#pack[at + 4]!, [lon, lat, lon, lat]);
    }
  }
}
