import { isNear, type NearGrid } from '../../../app/near-route.ts';
import type { Bbox } from '../../../contract/common.ts';
import { lentOnly } from '../extract/detached.ts';
import { FarList, type FarObjects } from '../extract/far-objects.ts';
import { type LatLon, liesOnEarth } from '../extract/position.ts';
import type { Member, OsmType, RawElement } from '../extract/raw-element.ts';
import { RELATION_DEPTH_MAX } from '../source/limits.ts';

/** Finds an element that lends geometry, or a wanted one; undefined when the file has it not. */
export type Lookup = (type: OsmType, id: number) => RawElement | undefined;

/** Positions that stand for an element: a centre, the corners of its bounds. */
const standIns = ({ center, bounds }: RawElement): (LatLon | undefined)[] =>
  bounds === undefined
    ? [center]
    : [center, { lat: bounds.minlat, lon: bounds.minlon }, { lat: bounds.maxlat, lon: bounds.maxlon }];

/** The box around all that is known of where an element is. */
class PlaceBox {
  #west = Infinity;
  #south = Infinity;
  #east = -Infinity;
  #north = -Infinity;
  readonly #lookup: Lookup;
  readonly #relations = new Set<RawElement>();
  /** Relations lie so deep in each other that not all of them were looked at. */
  #isOpen = false;

  constructor(lookup: Lookup) {
    this.#lookup = lookup;
  }

  /** Takes in the element's own positions and those of all that it is made of. */
  add(element: RawElement, depth = 0): this {
    this.#position(element);
    if (element.type === 'node') return this;
    // Relations may be made of each other.
    if (element.type === 'relation') {
      if (this.#relations.has(element)) return this;
      if (depth > RELATION_DEPTH_MAX) {
        this.#isOpen = true;
        return this;
      }
      this.#relations.add(element);
    }
    for (const position of standIns(element)) this.#position(position);
    for (const position of element.geometry ?? []) this.#position(position);
    for (const id of element.nodes ?? []) this.#position(this.#lookup('node', id));
    for (const member of element.members ?? []) this.#member(member, depth + 1);
    return this;
  }

  #member(member: Member, depth: number): void {
    this.#position(member);
    for (const position of member.geometry ?? []) this.#position(position);
    const element = this.#lookup(member.type, member.ref);
    if (element !== undefined) this.add(element, depth);
  }

  #position(position: unknown): void {
    if (!liesOnEarth(position)) return;
    this.#west = Math.min(this.#west, position.lon);
    this.#east = Math.max(this.#east, position.lon);
    this.#south = Math.min(this.#south, position.lat);
    this.#north = Math.max(this.#north, position.lat);
  }

  get box(): Bbox | null {
    return !this.#isOpen && this.#west <= this.#east
      ? [this.#west, this.#south, this.#east, this.#north]
      : null;
  }
}

/** The box around all that is known of where an element is; null where nothing is. */
export const boxOfElement = (element: RawElement, lookup: Lookup): Bbox | null =>
  new PlaceBox(lookup).add(element).box;

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
    const box = boxOfElement(element, lookup);
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
  const pending: RawElement[] = [...kept].reverse();
  const need = (type: OsmType, id: number): void => {
    const key = `${type}/${id}`;
    if (seen.has(key)) return;
    seen.add(key);
    const element = lookup(type, id);
    if (element === undefined) return;
    if (!isKept.has(element)) lending.push(isWanted.has(element) ? lentOnly(element) : element);
    pending.push(element);
  };
  for (let element = pending.pop(); element !== undefined; element = pending.pop()) {
    for (const id of element.nodes ?? []) need('node', id);
    for (const member of element.members ?? []) need(member.type, member.ref);
  }
  return lending;
}
