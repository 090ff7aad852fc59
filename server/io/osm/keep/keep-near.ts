import { isNear, type NearGrid } from '../../../app/near-route.ts';
import type { Bbox } from '../../../contract/common.ts';
import { lentOnly } from '../extract/detached.ts';
import { FarList, type FarObjects, joinedBoxes } from '../extract/far-objects.ts';
import { liesOnEarth } from '../extract/position.ts';
import type { OsmType, RawElement } from '../extract/raw-element.ts';

/** Finds an element that lends geometry, or a wanted one; undefined when the file has it not. */
export type Lookup = (type: OsmType, id: number) => RawElement | undefined;

/** The box around positions [lon, lat], longitudes as they stand; null when there are none. */
export function boxOfPositions(positions: Iterable<readonly [number, number]>): Bbox | null {
  let box: Bbox | null = null;
  for (const [lon, lat] of positions) box = joinedBoxes(box, [lon, lat, lon, lat]);
  return box;
}

/** The box around all that is known of where an element is. */
class PlaceBox {
  #west = Infinity;
  #south = Infinity;
  #east = -Infinity;
  #north = -Infinity;
  readonly #lookup: Lookup;
  readonly #seen = new Set<RawElement>();

  constructor(lookup: Lookup) {
    this.#lookup = lookup;
  }

  /** Takes in the element's own positions and those of all that it is made of. */
  add(element: RawElement): this {
    this.#position(element);
    if (element.type === 'node') return this;
    // Relations may be made of each other.
    if (element.type === 'relation') {
      if (this.#seen.has(element)) return this;
      this.#seen.add(element);
    }
    this.#position(element.center);
    const { bounds } = element;
    if (bounds !== undefined) {
      this.#position({ lat: bounds.minlat, lon: bounds.minlon });
      this.#position({ lat: bounds.maxlat, lon: bounds.maxlon });
    }
    for (const at of element.geometry ?? []) this.#position(at);
    for (const id of element.nodes ?? []) this.#position(this.#lookup('node', id));
    for (const member of element.members ?? []) {
      this.#position(member);
      for (const at of member.geometry ?? []) this.#position(at);
      const made = this.#lookup(member.type, member.ref);
      if (made !== undefined) this.add(made);
    }
    return this;
  }

  #position(at: unknown): void {
    if (!liesOnEarth(at)) return;
    this.#west = Math.min(this.#west, at.lon);
    this.#east = Math.max(this.#east, at.lon);
    this.#south = Math.min(this.#south, at.lat);
    this.#north = Math.max(this.#north, at.lat);
  }

  get box(): Bbox | null {
    return this.#west <= this.#east ? [this.#west, this.#south, this.#east, this.#north] : null;
  }
}

export interface Kept {
  /** Wanted elements that may touch the land, and those of which nobody knows where they are. */
  near: RawElement[];
  far: FarObjects;
}

/**
 * Parts the wanted elements by whether they may touch the land that is near. An element over the 180th meridian is taken to go all
 * the way round, so it errs on the side of near.
 */
export function keepNear(wanted: readonly RawElement[], near: NearGrid, lookup: Lookup): Kept {
  const far = new FarList();
  const kept = wanted.filter((element) => {
    const { box } = new PlaceBox(lookup).add(element);
    if (box === null || isNear(near, box)) return true;
    far.add(element, box);
    return false;
  });
  return { near: kept, far: far.objects() };
}

/**
 * What those elements are made of that were kept of the wanted ones. Wanted ones that were not kept and still lend
 * geometry come without their tags.
 */
export function lendingOf(
  kept: readonly RawElement[],
  wanted: readonly RawElement[],
  lookup: Lookup,
): RawElement[] {
  const isKept = new Set(kept);
  const isWanted = new Set(wanted);
  const lending: RawElement[] = [];
  const seen = new Set<string>();
  const need = (type: OsmType, id: number): void => {
    const key = `${type}/${id}`;
    if (seen.has(key)) return;
    seen.add(key);
    const element = lookup(type, id);
    if (element === undefined) return;
    if (!isKept.has(element)) lending.push(isWanted.has(element) ? lentOnly(element) : element);
    needsOf(element);
  };
  const needsOf = (element: RawElement): void => {
    for (const id of element.nodes ?? []) need('node', id);
    for (const member of element.members ?? []) need(member.type, member.ref);
  };
  for (const element of kept) needsOf(element);
  return lending;
}
